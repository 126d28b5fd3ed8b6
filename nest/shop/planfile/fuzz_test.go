package planfile_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"sawbill/nest/progress"
	"sawbill/nest/shop/planfile"
)

// Whatever stands in a file, with a sum that is right or none, it is refused or gives a plan
// that can be gone on with: nothing ends the program.
func FuzzParse(f *testing.F) {
	paths, _ := filepath.Glob(plans + "*/*/*/" + planfile.Name)
	if len(paths) == 0 {
		f.Fatal("there are no plans")
	}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text, 0, int64(-1))
		f.Add(text, 40, int64(1))
	}
	f.Fuzz(func(t *testing.T, data []byte, at int, value int64) {
		goOn(t, data)
		goOn(t, []byte(mended(withNumber(string(data), at, value))))
	})
}

// One number after another of every plan is replaced by others: no file that comes of it
// ends the program.
func TestNumbersThatMakeNoSense(t *testing.T) {
	paths, _ := filepath.Glob(plans + "*/*/*/" + planfile.Name)
	tried := 0
	defer func() { t.Logf("%d files with a number changed", tried) }()
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		data := string(text)
		n := len(numbers.FindAllStringIndex(data, -1))
		step := 1
		if !long {
			step = 1 + n/6
		}
		for at := 0; at < n; at += step {
			for _, value := range []int64{-1, 0, 1, 3, 1 << 19, 1 << 40, -1 << 63, 1<<63 - 1} {
				goOn(t, []byte(mended(withNumber(data, at, value))))
				tried++
			}
		}
	}
}

var long = os.Getenv("SAWBILL_LONG") != ""

var numbers = regexp.MustCompile(`[:\[,]-?\d+`)

// withNumber is a text with another number at one place.
func withNumber(text string, at int, value int64) string {
	all := numbers.FindAllStringIndex(text, -1)
	if len(all) == 0 {
		return text
	}
	one := all[(at%len(all)+len(all))%len(all)]
	return text[:one[0]+1] + strconv.FormatInt(value, 10) + text[one[1]:]
}

// goOn reads a plan and tells that all of it is cut.
func goOn(t *testing.T, data []byte) {
	p, err := planfile.Parse(planfile.Name, data)
	if err != nil {
		return
	}
	copies := 0
	for _, l := range p.Plan.Layouts {
		copies += l.Repeat
	}
	if copies > 1000 {
		return // it holds, and takes long
	}
	s := progress.Begin(p.Plan, p.Made...)
	s.Code = p.Code
	for i := range p.Plan.Layouts {
		s.Pieces(p.Code)
		s.Apply(progress.Event{Word: "cut", Value: strconv.Itoa(i + 1)}) // or not, if it cannot be
	}
	s.Blanks()
	s.Pieces(p.Code)
	s.Good()
	p.RackIDs()
	p.Bytes()
}
