module sawbill

go 1.26.0

require (
	github.com/google/go-cmp v0.7.0 // indirect
	github.com/jung-kurt/gofpdf v1.16.2 // indirect
	github.com/pelletier/go-toml/v2 v2.4.3 // indirect
	github.com/spf13/pflag v1.1.0 // indirect
	golang.org/x/image v0.47.0 // indirect
	golang.org/x/text v0.43.0 // indirect
	gonum.org/v1/gonum v0.17.0 // indirect
)
