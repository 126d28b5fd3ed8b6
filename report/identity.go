package report

import (
	"crypto/sha256"
	"math/big"

	"sawbill/nest/cutplan"
)

// letters of an identity: none is taken for another, printed small or penciled on an
// offcut. Left out are those like a figure (B, G, I, O, S, Z) or another letter (U).
const letters = "346789ACDEFHJKLMNPQRTVWXY"

// identityLength gives some ten million identities: enough to tell the printouts of
// one bench apart.
const identityLength = 5

// Identity tells a plan from others of the same job: five letters and figures made
// of all that the plan file says, but for the time that it took. Units and paper
// change nothing. A code that the options give stands.
func Identity(p *cutplan.Plan, o Options) string {
	if o.Code != "" {
		return o.Code
	}
	f := fileOf(p, Options{Case: o.Case, Rest: o.Rest, WhatIf: o.WhatIf}, offcutNames{})
	f.Seconds = "0"
	sum := sha256.Sum256(encoded(f))
	n, base, letter := new(big.Int).SetBytes(sum[:]), big.NewInt(int64(len(letters))), new(big.Int)
	code := make([]byte, identityLength)
	for i := range code {
		n.DivMod(n, base, letter)
		code[i] = letters[letter.Int64()]
	}
	return string(code)
}
