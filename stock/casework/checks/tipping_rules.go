package checks

// Requirements of the rules for furniture that may tip, as far as they are known. They stand beside
// every estimate, since no estimate replaces their tests.
const (
	// Scope, date and the subjects of the tests after 16 CFR 1261.2, 88 Fed. Reg.
	// 28403 and the abstract of ASTM F2057-23; the rest from memory.
	usRule = "The US rule, 16 CFR part 1261 with ASTM F2057-23, is for free-standing storage for clothing made after 1 September 2023 " +
		"that is 27 in (685.8 mm) or more high, weighs 30 lb (13.6 kg) or more and has 3.2 ft3 (90.6 liters) or more of closed storage. " +
		"It asks that such a unit does not tip in three tests: with its drawers filled as with clothing; pulled forward; and on a carpet under a child's weight of 60 lb (27.2 kg). " +
		"From memory, it asks for a warning label and a tip restraint besides, and an anchor does not count in its tests."
	// The standard's title, and that its methods are in EN 16122, after a catalogue
	// of standards; no load of its tests for stability is known from a source.
	europeanRule = "EN 14749:2016 with A1:2022 is for storage furniture of homes and kitchens, and most of its tests are those of EN 16122. " +
		"Its loads for stability are not known here and not reckoned: take them from the standard. " +
		"From memory, it tests furniture empty and loaded, its doors and drawers open, with a force down on the front of what is open."
)
