package joints

import (
	"fmt"
	"slices"
	"strings"
)

// Site is where a case has joints of one kind.
type Site int

const (
	CarcassCorner Site = iota
	DividerEnd         // of partitions and dividers
	ShelfEnd
	BackEdge
	FrameCorner
	FrameMiddle // the ends of mid stiles and mid rails; the word is that of the corner
	DrawerCorner
	DrawerBottom // always a groove
)

// Sites are those whose joint the job file names.
var Sites = []Site{CarcassCorner, DividerEnd, ShelfEnd, BackEdge, FrameCorner, DrawerCorner}

// Keys are the keys of a site in its table of the job file, and its words that are no joints, ahead
// of those that are.
type Keys struct {
	Tag    string // of the field of the design: `joint:"carcass"`
	Word   string // key of the joint's word
	Depth  string // key of its depth
	lead   string // what the manual says first
	others []other
}

// other is a word of a site that is no joint, and what the manual says of it.
type other struct{ word, note string }

var keysOf = map[Site]Keys{
	CarcassCorner: {Tag: "carcass", Word: "joint", Depth: "joint_depth", lead: "of the four corners: "},
	DividerEnd:    {Tag: "divider", Word: "joint", Depth: "joint_depth", lead: "at its two ends: "},
	ShelfEnd:      {Tag: "shelf", Word: "held", Depth: "joint_depth", others: []other{{"pins", "the shelf lies loose"}}},
	BackEdge:      {Tag: "back", Word: "fit", Depth: "depth", others: []other{{"none", "no back"}, {"applied", "on the rear edges, over the whole case"}}},
	FrameCorner:   {Tag: "frame", Word: "corner"},
	DrawerCorner:  {Tag: "drawer", Word: "corner", Depth: "corner_depth"},
	DrawerBottom:  {Word: "bottom", Depth: "groove_depth"},
}

// Keys returns the keys of the site.
func (s Site) Keys() Keys { return keysOf[s] }

// WordsOf lists the words of the site with that tag, the default first.
func WordsOf(tag string) []string {
	for _, s := range Sites {
		if keysOf[s].Tag == tag {
			return s.Words()
		}
	}
	panic("casework: no site has the tag " + tag)
}

// Words lists what the job file may say at a site, the default first.
func (s Site) Words() []string {
	var words []string
	for _, o := range keysOf[s].others {
		words = append(words, o.word)
	}
	for _, j := range s.Joints() {
		words = append(words, j.Name())
	}
	return words
}

// Joints are those that a site may have.
func (s Site) Joints() []Joint {
	return slices.DeleteFunc(slices.Clone(All), func(j Joint) bool {
		_, may := j.At(s)
		return !may
	})
}

// Named is the joint of that name, butt for a word that is no joint.
func (s Site) Named(name string) Joint {
	for _, j := range s.Joints() {
		if j.Name() == name {
			return j
		}
	}
	return Butted
}

// Manual lists the words of a site as the manual does: `"dado"`; `"dowel"`: sizes as for `"butt"`.
func (s Site) Manual() string {
	all := slices.Clone(keysOf[s].others)
	for _, j := range s.Joints() {
		all = append(all, other{j.Name(), FitOf(j, s).Says})
	}
	said := make([]string, len(all))
	for i, o := range all {
		said[i] = fmt.Sprintf("`%q`", o.word)
		if o.note != "" {
			said[i] += ": " + o.note
		}
	}
	return keysOf[s].lead + strings.Join(said, "; ")
}
