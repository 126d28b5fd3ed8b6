package casework

import "fmt"

// many is the word for n of something, in the singular for 1 alone.
func many(n int, one, several string) string {
	if n == 1 {
		return one
	}
	return several
}

// counted writes "1 shelf" or "3 shelves".
func counted(n int, one, several string) string { return fmt.Sprint(n, " ", many(n, one, several)) }
