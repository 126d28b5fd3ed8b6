package job_test

import (
	"testing"
	"testing/fstest"

	"sawbill/stock/job"
)

// A tax is written as a number or with its sign.
func TestATaxIsAPercentage(t *testing.T) {
	for written, want := range map[string]int{`8.25`: 825, `"8.25 %"`: 825, `"8,25%"`: 825, `19`: 1900} {
		source := "[shopping]\ntax = " + written + "\n\n[[sheet]]\nname = \"p\"\nmaterial = \"ply\"\nthickness = 18\nlength = 2440\nwidth = 1220\n\n" +
			"[[part]]\nname = \"shelf\"\nmaterial = \"ply\"\nlength = 900\nwidth = 300\n"
		file, err := job.ReadFS(fstest.MapFS{"a.toml": {Data: []byte(source)}}, "a.toml")
		if err != nil || int(file.Tax) != want {
			t.Errorf("%s: %v, %v", written, file, err)
		}
	}
}
