// Command sawbill turns a case design or a part list into a shopping list and
// diagrams to saw from.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}
