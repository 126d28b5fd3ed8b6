package main

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"sawbill/nest/shop"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

// jobChanges are the flags that change a job under way.
type jobChanges struct {
	job.Changes
	reread bool
}

func (t *jobChanges) flags(f *pflag.FlagSet) {
	f.StringArrayVar(&t.Added, "add", nil, "a `part` more: \"shelf: 600 x 300, birch ply 18, 2\", with\n\", grain width\" or \", grain any\" behind it if that is so")
	f.StringArrayVar(&t.Without, "drop", nil, "a `part` is not wanted any more")
	f.StringArrayVar(&t.Counts, "count", nil, "another number of a part, `NAME=3`")
	f.StringArrayVar(&t.Sizes, "size", nil, "another size of a part, `\"NAME=620 x 300\"`, length first: what is\ncut is trimmed, or is no longer good")
	f.StringArrayVar(&t.Smaller, "smaller", nil, "a case becomes less wide, high or deep, `height=6 mm`, or a part\nshorter, by its name: what is cut is trimmed to that")
	f.StringArrayVar(&t.Thicknesses, "thickness", nil, "a material measures otherwise than was said, `\"NAME=17.6\"`")
	f.StringVar(&t.Kerf, "kerf", "", "another blade cuts, of this `kerf`")
	f.BoolVar(&t.reread, "reread", false, "read the job file again: what is changed in it counts")
}

// changeJob changes the job of a rest, and prints the warnings of a job file read anew.
func (in *invocation) changeJob(rest *shop.Rest, t *jobChanges) error {
	warnings, err := rest.ChangeJob(t.Changes, t.reread)
	if err == nil {
		warn(in, warnings)
	}
	return t.asTyped(err)
}

// asTyped names the flag that the user wrote: the job calls it --without.
func (t *jobChanges) asTyped(err error) error {
	var faults fault.Faults
	if !errors.As(err, &faults) {
		return err
	}
	faults = slices.Clone(faults)
	for i := range faults {
		if name, of := strings.CutPrefix(faults[i].File, "--without "); of && slices.Contains(t.Without, name) {
			faults[i].File = "--drop " + name
		}
	}
	return faults
}
