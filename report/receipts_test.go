package report

import (
	"encoding/json"
	"strings"
	"testing"
)

// What is paid to each seller is one sum in plan.json and on the first page, and the sums
// without tax are the cost of the plan.
func TestReceiptsAgree(t *testing.T) {
	taxed := 0
	for _, e := range examples(t) {
		o := Options{Case: e.design, Pages: StorePages}
		var file struct {
			Cost     json.Number
			Receipts []struct {
				Seller         string
				Net, Tax, Paid json.Number
			}
		}
		if err := json.Unmarshal(JSON(e.plan, o), &file); err != nil {
			t.Fatal(err)
		}
		var front strings.Builder
		for _, text := range lay(e.plan, o).Pages[0].Texts() {
			front.WriteString(text.String + "\n")
		}
		cents := func(n json.Number) (sum int64) {
			for _, c := range strings.Replace(n.String(), ".", "", 1) {
				sum = 10*sum + int64(c-'0')
			}
			return sum
		}
		var net int64
		for _, r := range file.Receipts {
			net += cents(r.Net)
			if cents(r.Net)+cents(r.Tax) != cents(r.Paid) {
				t.Errorf("%s: %s and %s are not %s", e.name, r.Net, r.Tax, r.Paid)
			}
			if cents(r.Tax) > 0 {
				taxed++
			}
			if cents(r.Paid) > 0 && !strings.Contains(front.String(), "\n"+r.Paid.String()+"\n") {
				t.Errorf("%s: the first page does not say %s", e.name, r.Paid)
			}
		}
		if net != cents(file.Cost) {
			t.Errorf("%s: receipts of %d cents, the plan costs %s", e.name, net, file.Cost)
		}
	}
	if taxed == 0 {
		t.Error("no example has tax")
	}
}
