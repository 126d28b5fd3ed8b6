package shop_test

import (
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/job"
)

// A later thought about a part counts more than an earlier one.
func TestLaterThoughtsOverruleEarlierOnes(t *testing.T) {
	shorter, dropped := job.Changes{Smaller: []string{"shelf=10"}}, job.Changes{Without: []string{"shelf"}}
	for _, c := range []struct {
		name          string
		first, second job.Changes
		edit          func(text string) string // of the job file, which is then read again
		want          stock.Part               // its name, count and size
	}{
		{"a size after a shorter one", shorter, job.Changes{Sizes: []string{"shelf=600 x 200"}}, nil, stock.Part{Name: "shelf", Count: 4, Length: 600, Width: 200}},
		{"shorter again", shorter, shorter, nil, stock.Part{Name: "shelf", Count: 4, Length: 744, Width: 280}},
		{"wanted again", dropped, job.Changes{Counts: []string{"shelf=2"}}, nil, stock.Part{Name: "shelf", Count: 2, Length: 764, Width: 280}},
		{"dropped, and then deleted from the file", dropped, job.Changes{}, withoutShelf, stock.Part{Name: "shelf"}},
		{"counted, and then deleted from the file", job.Changes{Counts: []string{"shelf=2"}}, job.Changes{}, withoutShelf, stock.Part{Name: "shelf"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := in(t)
			w.must(w.plan("bench.toml", "p", "K7F2M"))
			for i, as := range []job.Changes{c.first, c.second} {
				folder := []string{"p", "p-2"}[i]
				again := i == 1 && c.edit != nil
				if again {
					w.write("bench.toml", c.edit(bench))
				}
				rest, err := w.open(folder).Rest(w.Context())
				w.must(err)
				_, err = rest.ChangeJob(as, again)
				w.must(err)
				_, err = w.writeRest(rest, "", []string{"H4XYZ", "M2ABC"}[i])
				w.must(err)
			}
			got := stock.Part{Name: "shelf"}
			parts := w.open("p-3").Plan().File.Parts
			if at := slices.IndexFunc(parts, func(p stock.Part) bool { return p.Name == "shelf" }); at >= 0 {
				got.Count, got.Length, got.Width = parts[at].Count, parts[at].Length, parts[at].Width
			}
			c.want.Length, c.want.Width = c.want.Length*stock.Millimeter, c.want.Width*stock.Millimeter
			if got.Count != c.want.Count || got.Length != c.want.Length || got.Width != c.want.Width {
				t.Errorf("%+v, want %+v", got, c.want)
			}
		})
	}
}

// withoutShelf deletes the last part of a job.
func withoutShelf(text string) string { return text[:strings.LastIndex(text, "[[part]]")] }
