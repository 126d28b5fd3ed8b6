package job

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sawbill/stock"
)

const labeledJob = "[[sheet]]\nname = \"ply\"\nmaterial = \"ply\"\nthickness = 18\nlength = 2440\nwidth = 1220\n" +
	"[[part]]\nname = \"shelf\"\nmaterial = \"ply\"\nlength = 600\nwidth = 300\n"

func readLabeled(t *testing.T, labels string) (*File, error) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "job.toml")
	if err := os.WriteFile(path, []byte("[labels]\n"+labels+labeledJob), 0o644); err != nil {
		t.Fatal(err)
	}
	return Read(path)
}

func TestLabelsAreRead(t *testing.T) {
	f, err := readLabeled(t, "columns = 3\nrows = 8\nside_margin = 7\ntop_margin = \"1/2 in\"\ncolumn_gap = 2.5\n")
	if err != nil {
		t.Fatal(err)
	}
	want := stock.LabelGrid{Columns: 3, Rows: 8, SideMargin: 7 * stock.Millimeter, TopMargin: stock.Inch / 2, ColumnGap: 5 * stock.Millimeter / 2}
	if f.Labels != want {
		t.Errorf("%+v, want %+v", f.Labels, want)
	}
}

// Five labels side by side on A4 with margins of 7 are (210 - 14) / 5 = 39.2 wide; twelve
// on a Letter sheet of 279.4 are 279.4 / 12 = 23.28 high. Following the remedy helps.
func TestAGridThatDoesNotFitIsRefused(t *testing.T) {
	for labels, want := range map[string]string{
		"columns = 5\nrows = 8\nside_margin = 7\n": "5 labels side by side would be 39.2 mm wide, less than 45 mm; give fewer columns, or a smaller side_margin or column_gap",
		"columns = 3\nrows = 12\n":                 "12 labels below one another would be",
		"columns = 3\n":                            "rows",
	} {
		if _, err := readLabeled(t, labels); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", labels, err, want)
		}
	}
	for _, labels := range []string{"columns = 4\nrows = 8\nside_margin = 7\n", "columns = 3\nrows = 11\n"} {
		if _, err := readLabeled(t, labels); err != nil {
			t.Errorf("%q: %v", labels, err)
		}
	}
}
