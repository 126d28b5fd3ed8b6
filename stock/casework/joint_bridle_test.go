package casework

import (
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
)

// Members 50 wide and 38 thick, 900 x 720, two bays. Both stiles and rails run through: 720 and 900.
// A tenon is 50 long, from shoulders at 50 and 900 - 50 = 850, and lies between cheeks at 38 / 3 =
// 12.7 and 25.3. The mortise takes this third, 50 deep, out of both ends of a stile. The mid stile
// is butted: 720 - 100 = 620 long, its line on the rails in the middle, at (900 - 50) / 2 = 425.
func TestBridleJoints(t *testing.T) {
	d := framed()
	d.Frame.Corner = word("bridle")
	d.Bays = []Bay{{}, {}}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	for name, long := range map[string]string{"stile": "720", "rail": "900", "mid stile": "620"} {
		if got := partNamed(t, c, name).Length; got != metric(long).Value {
			t.Errorf("a %s is %s long, want %s", name, from.Ruler.Print(got), long)
		}
	}
	wantLines(t, []string{"both ends: from the left end 50, 850"}, marked(c, from.Ruler, "rail", "tenon shoulders"))
	wantLines(t, []string{"both ends: from the front face ≈12.65, ≈25.3"}, marked(c, from.Ruler, "rail", "tenon cheeks"))
	wantLines(t, []string{"both ends: from the front face ≈12.65; ≈12.65 wide, 50 deep"}, marked(c, from.Ruler, "stile", "open mortise"))
	wantLines(t, []string{"inner edge: from the left end 425; 50 wide, 0 deep"}, marked(c, from.Ruler, "rail", "mid stile line"))
	var said []string
	for _, s := range c.Assembly {
		if strings.Contains(s.Text, "bridle") {
			said = append(said, s.Unit)
		}
	}
	if !slices.Equal(said, []string{"case", "frames"}) {
		t.Errorf("bridle joints are named in the steps of %q", said)
	}
}

// The rail's tenon fills the stile's mortise in the case, to the last unit.
func TestBridleTenonsFillTheirMortises(t *testing.T) {
	d := framed()
	d.Frame.Corner, d.Frame.StileWidth, d.Frame.RailWidth = word("bridle"), metric("61.3"), metric("47.7")
	c := derive(t, d, workshop(stock.Millimeters))
	var tenon, mortise [2]stock.Length // where it begins in the thickness, how thick it is
	var long, deep stock.Length
	for _, k := range c.Marks {
		switch k.What {
		case "tenon cheeks":
			tenon = [2]stock.Length{k.At[0], k.At[1] - k.At[0]}
		case "open mortise":
			mortise, deep = [2]stock.Length{k.At[0], k.Width}, k.Depth
		case "tenon shoulders":
			long = k.At[0]
		}
	}
	if tenon != mortise || long != metric("61.3").Value || deep != metric("47.7").Value {
		t.Errorf("a tenon at %v, %d long, in a mortise at %v, %d deep", tenon, long, mortise, deep)
	}
}

// A third of 9 is 3, less than the kerf of 3.2.
func TestBridleMortisesNarrowerThanTheKerf(t *testing.T) {
	d := framed()
	d.Frame.Corner, d.Frame.Thickness = word("bridle"), metric("9")
	from := workshop(stock.Millimeters)
	from.Kerf = metric("3.2").Value
	_, faults := Derive(d, from)
	wantLines(t, []string{"case.frame.thickness: an open mortise of a third of 9 mm, 3 mm wide, is narrower than the kerf, 3.2 mm; " +
		"make the frame thicker, or take another corner"}, spelled(faults))
}
