package job_test

import (
	"bytes"
	"encoding/binary"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock"
)

func utf16LE(s string) []byte {
	var b bytes.Buffer
	binary.Write(&b, binary.LittleEndian, utf16.Encode([]rune("\ufeff"+s)))
	return b.Bytes()
}

func utf16BE(s string) []byte {
	var b bytes.Buffer
	binary.Write(&b, binary.BigEndian, utf16.Encode([]rune("\ufeff"+s)))
	return b.Bytes()
}

// One list in the many ways in which spreadsheets write it. The rules of
// quoting are those of RFC 4180, section 2.
func TestPartListsReadAlikeHoweverTheyAreWritten(t *testing.T) {
	type size struct {
		Name          string
		Length, Width stock.Length
		Count         int
		Grain         stock.Grain
		Note          string
	}
	want := []size{
		{"shelf, upper", 900*mm + mm/2, 300 * mm, 3, stock.GrainLength, ""},
		{"side", 698*mm + mm/2, 250 * mm, 1, stock.GrainAny, `says "left"`},
	}
	const plain = `name,material,length,width,count,grain,note
"shelf, upper",birch ply 18,900.5,300,3,,
side,birch ply 18,698.5,250,1,any,"says ""left"""
`
	tests := []struct{ name, list string }{
		{"plain", plain},
		{"without a last line end", strings.TrimSuffix(plain, "\n")},
		{"line ends of Windows", strings.ReplaceAll(plain, "\n", "\r\n")},
		{"line ends of old", strings.ReplaceAll(plain, "\n", "\r")},
		{"byte order mark", "\ufeff" + plain},
		{"UTF-16, little end first", string(utf16LE(plain))},
		{"UTF-16, big end first", string(utf16BE(plain))},
		{"tabs", "name\tmaterial\tlength\twidth\tcount\tgrain\tnote\nshelf, upper\tbirch ply 18\t900,5\t300\t3\t\t\nside\tbirch ply 18\t698,5\t250\t\tany\tsays \"left\"\n"},
		{"semicolons and decimal commas", "name;material;length;width;count;grain;note\nshelf, upper;birch ply 18;900,500;300,0;3,00;;\nside;birch ply 18;698,5;250;;any;\"says \"\"left\"\"\"\n"},
		{"semicolons and decimal points", "name;material;length;width;count;grain;note\nshelf, upper;birch ply 18;900.5;300;3;;\nside;birch ply 18;698.5;250;;any;\"says \"\"left\"\"\"\n"},
		{"separator told", "sep=;\r\nname;material;length;width;count;grain;note\r\nshelf, upper;birch ply 18;900.5;300;3;;\r\nside;birch ply 18;698.5;250;;any;\"says \"\"left\"\"\"\r\n"},
		{"columns in another order", "Count,NOTE,Grain,Width,Length,Material,Name\n3,,,300,900.5,birch ply 18,\"shelf, upper\"\n,\"says \"\"left\"\"\",any,250,698.5,birch ply 18,side\n"},
		{"units in the heading", "name,material,Length (cm),Width [m],count,grain,note\n\"shelf, upper\",birch ply 18,90.05,0.3,3,,\nside,birch ply 18,69.85,0.25,,any,\"says \"\"left\"\"\"\n"},
		{"units in heading and cells", "name,material,length_in,width in mm,count,grain,note\n\"shelf, upper\",birch ply 18,900.5 mm,300,3,,\nside,birch ply 18,27 1/2,25 cm,,any,\"says \"\"left\"\"\"\n"},
		{"inch marks without quotes", "name,material,length,width,count,grain,note\n\"shelf, upper\",birch ply 18,900.5,300,3,,\nside,birch ply 18,27-1/2\",250,,any,says \"left\"\n"},
		{"empty rows and columns", "\n,,,,,,,,\nname,material,length,width,count,grain,note,,\n\"shelf, upper\",birch ply 18,900.5,300,3,,,,\n\n , ,,,,,,,\nside,birch ply 18,698.5,250,,any,\"says \"\"left\"\"\"\n,,,,,,,,\n"},
		{"cells with line ends", "name,\"material\",length,width,count,grain,note\n\"shelf,\nupper\",birch ply 18,900.5,300,3,,\nside,birch  ply 18,698.5,250,,any,\"says\r\n\"\"left\"\"\"\n"},
		{"blanks about the cells", " name , material , length , width , count , grain , note\n \"shelf, upper\", birch ply 18 , 900.5 , 300 , 3 ,,\nside , birch ply 18 , 698.5 , 250 ,, any ,\"says \"\"left\"\"\"\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			file := mustRead(t, `parts = "list.csv"`+sheet18, "list.csv", tt.list)
			var got []size
			for _, p := range file.Parts {
				got = append(got, size{p.Name, p.Length, p.Width, p.Count, p.Grain, p.Note})
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("parts (-want +got):\n%s", diff)
			}
			if len(file.Warnings) > 0 {
				t.Errorf("warnings: %v", file.Warnings)
			}
		})
	}
}

func TestPartListTellsTheLineOfItsOwnFile(t *testing.T) {
	_, err := read(t, `parts = "list.csv"`+sheet18, "list.csv",
		"\r\nname,material,length,width,note\r\nshelf,birch ply 18,900,300,\"two\r\nlines\"\r\n\r\nside,birch ply 18,9oo,300,\r\n")
	const want = `list.csv:6: part "side": length: "9oo": "oo" is no unit of length here; write mm, cm, m, in or ft`
	if err == nil || err.Error() != want {
		t.Errorf("error is\n%v\nwant\n%v", err, want)
	}
}

func TestTextThatIsNoneIsRefused(t *testing.T) {
	for list, want := range map[string]string{
		"\xff\xfen\x00a":            "bench.toml:1: parts: list.csv: the file is UTF-16 text that breaks off; save it again, as UTF-8",
		strings.Repeat("a", 17<<20): "bench.toml:1: parts: list.csv: the file has 17 MB, and at most 16 MB are read; check that it is the right file",
	} {
		_, err := read(t, `parts = "list.csv"`+sheet18, "list.csv", list)
		if err == nil || err.Error() != want {
			t.Errorf("error is %v, want %s", err, want)
		}
	}
}

func TestPartListWarnsOfColumnsNotRead(t *testing.T) {
	file := mustRead(t, `parts = "list.csv"`+sheet18, "list.csv",
		"name,material,length,width,supplier,cut to length (mm)\nshelf,birch ply 18,900,300,the yard,905\n")
	if len(file.Warnings) != 1 || !strings.HasPrefix(file.Warnings[0].Error(), `list.csv:1: not read: the columns "supplier" and "cut to length (mm)"; columns read are name, `) {
		t.Errorf("warnings are %v, want one of both columns", file.Warnings)
	}
}

func TestSeveralPartListsFollowEachOther(t *testing.T) {
	const heading = "name,material,length,width\n"
	file := mustRead(t, `parts = ["b.csv", "a.csv"]`+sheet18+oneShelf,
		"a.csv", heading+"shelf,birch ply 18,100,100\n",
		"b.csv", heading+"side,birch ply 18,100,100\n")
	var got []string
	for _, p := range file.Parts {
		got = append(got, p.Name+" from "+p.From)
	}
	want := []string{"shelf from bench.toml:9", "side from b.csv:2", "shelf 2 from a.csv:2"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("parts (-want +got):\n%s", diff)
	}
}
