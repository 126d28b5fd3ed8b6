package main

import (
	"strings"
	"testing"
)

const smallRack = `[[piece]]
id = "R1"
material = "birch ply"
length = 600
width = 300
thickness = 18
`

const smallJob = `[[sheet]]
name = "birch 18"
material = "birch ply"
thickness = 18
length = 2440
width = 1220
[[part]]
name = "shelf"
material = "birch ply"
length = 900
width = 300
`

// What is said of a wrong command line or file, and what is done when its remedy is
// followed.
func TestAMessageNamesARemedyThatWorks(t *testing.T) {
	for _, c := range []struct {
		reason string
		files  []string // name, text, name, text
		args   []string
		want   string
		then   []string // the remedy followed; files in it, too: name=text
	}{
		{"a job with an empty name", nil, []string{"plan", ""},
			"sawbill: an operand is empty; name a file or a folder; a shell variable in it may be empty\n", []string{"plan", "job.toml", "--quiet", "--iterations", "1"}},
		{"a plan with an empty name is not the one here", nil, []string{"progress", ""},
			"sawbill: an operand is empty; name a file or a folder; a shell variable in it may be empty\n", nil},
		{"an empty folder", nil, []string{"plan", "job.toml", "-o", ""},
			"sawbill: --output is empty; write a value behind it, or leave it out\n", []string{"plan", "job.toml", "--quiet", "--iterations", "1"}},
		{"an empty day is not today", nil, []string{"rack", "take", "R1", "--date", ""},
			"sawbill: --date is empty; write a value behind it, or leave it out\n", []string{"rack", "take", "R1"}},
		{"an empty part among the flags", nil, []string{"parts", "job.toml", "--without", ""},
			"sawbill: --without is empty; write a value behind it, or leave it out\n", []string{"parts", "job.toml"}},
		{"a count of no part", nil, []string{"parts", "job.toml", "--count", "0"},
			"--count 0: a name, = and a value are wanted; write it like --count \"shelf=3\"\n", []string{"parts", "job.toml", "--count", "shelf=3"}},
		{"no thickness of a material", nil, []string{"parts", "job.toml", "--thickness", "17.7"},
			"--thickness 17.7: a name, = and a value are wanted; write it like --thickness \"birch ply=17.7\"\n", []string{"parts", "job.toml", "--thickness", "birch ply=17.7"}},
		{"a count of another part", nil, []string{"parts", "job.toml", "--count", "bottom=2"},
			"--count bottom=2: there is no part \"bottom\"; take one that the job has: shelf\n", []string{"parts", "job.toml", "--count", "shelf=2"}},
		{"none of a piece", nil, []string{"rack", "add", "--material", "ply", "--length", "600", "--width", "300", "--thickness", "18", "--count", "0"},
			"rack add: count: 0 is no count; write a whole number above 0\n", []string{"rack", "add", "--material", "ply", "--length", "600", "--width", "300", "--thickness", "18", "--count", "1"}},
		{"too many of a piece", nil, []string{"rack", "add", "--material", "ply", "--length", "600", "--width", "300", "--thickness", "18", "--count", "1001"},
			"rack add: count: 1001 is more than can be meant (at most 1000); enter fewer at a time\n", nil},
		{"less than the least length", nil, []string{"rack", "find", "--material", "ply", "--length", "0.00001", "--width", "300"},
			"rack find: length: \"0.00001\": this is less than 0.000025 mm, the step in which lengths are kept; check the unit and the decimal mark\n", []string{"rack", "find", "--material", "ply", "--length", "0.000025 mm", "--width", "300"}},
		{"a word where flags belong", nil, []string{"rack", "add", "ply"},
			"sawbill: rack add takes flags alone, and \"ply\" belongs to none; put quotes around a value that has blanks, or leave the word out\n", nil},
		{"a word where nothing belongs", nil, []string{"rack", "list", "R1"},
			"sawbill: rack list takes flags alone, and \"R1\" belongs to none; put quotes around a value that has blanks, or leave the word out\n", []string{"rack", "list"}},
		{"no piece to take", nil, []string{"rack", "take"},
			"sawbill: rack take needs ID...; write sawbill rack take ID...\n", []string{"rack", "take", "R1"}},
		{"two lists", nil, []string{"rack", "import", "a.csv", "b.csv"},
			"sawbill: rack import takes one FILE.csv, not 2; write sawbill rack import FILE.csv\n", nil},
		{"no change to go back to", nil, []string{"rack", "restore"},
			"sawbill: rack restore needs N; write sawbill rack restore N\n", nil},
		{"no day", nil, []string{"rack", "take", "R1", "--date", "2026-13-01"},
			"sawbill: --date \"2026-13-01\" is no day; write it as year, month and day: 2026-03-05\n", []string{"rack", "take", "R1", "--date", "2026-03-05"}},
		{"a broken heading of a rack", []string{"rack.toml", strings.Replace(smallRack, "[[piece]]", "[[piece]", 1)}, []string{"rack", "list"},
			"rack.toml:1: the heading \"[[piece]\" is not closed; write [[piece]]\n", []string{"rack.toml=" + smallRack, "rack", "list"}},
		{"a list parted by two marks", []string{"job.toml", "parts = \"list.csv\"\n" + strings.Split(smallJob, "[[part]]")[0], "list.csv", "name,material,length,width\nshelf;birch ply;900;300\n"}, []string{"parts", "job.toml"},
			"list.csv:2: the row is parted by semicolons, and the heading by commas; part all columns of the list by the same mark\n", []string{"list.csv=name,material,length,width\nshelf,birch ply,900,300\n", "parts", "job.toml"}},
		{"a heading parted by two marks", []string{"job.toml", "parts = \"list.csv\"\n" + strings.Split(smallJob, "[[part]]")[0], "list.csv", "name;material,length,width\nshelf;birch ply,900,300\n"}, []string{"parts", "job.toml"},
			"list.csv:1: \"name;material\" in the heading holds another mark between columns than the rest of it; use one mark between all columns: a comma, a semicolon or a tab\n", []string{"list.csv=name;material;length;width\nshelf;birch ply;900;300\n", "parts", "job.toml"}},
		{"a device", nil, []string{"parts", "/dev/null"}, "/dev/null: is no regular file; name a file that holds text\n", nil},
		{"a folder", nil, []string{"parts", "."}, ".: is a folder; name a file in it\n", nil},
	} {
		t.Run(c.reason, func(t *testing.T) {
			t.Chdir(t.TempDir())
			writeText(t, "job.toml", smallJob)
			writeText(t, "rack.toml", smallRack)
			for i := 0; i < len(c.files); i += 2 {
				writeText(t, c.files[i], c.files[i+1])
			}
			status, out, errs := call(t, c.args...)
			if status == exitDone || out != "" || errs != c.want {
				t.Errorf("status %d, %s%s\nwant %s", status, out, errs, c.want)
			}
			if c.then == nil {
				return
			}
			then := c.then
			if name, text, ok := strings.Cut(then[0], "="); ok {
				writeText(t, name, text)
				then = then[1:]
			}
			if status, _, errs := call(t, then...); status != exitDone {
				t.Errorf("the remedy does not work: status %d, %s", status, errs)
			}
		})
	}
}
