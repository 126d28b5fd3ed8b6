// Package shop is a plan in the shop, from the first cut to the last part. A [Folder] is
// the folder of one plan. It is opened, and progress is reported there and taken back. The
// rest is planned into another folder, and leftovers are booked on the rack.
//
// # The files
//
// The pages of a plan and plan.sawbill change together (see [store.Folder]). Beside them
// lies progress.jsonl, the record of all reports, one entry a line (see [store.Record]).
// All that changes either file holds the lock of the folder, and checks under it that the
// plan may still be changed. No lock is held while a rest is planned, which takes minutes.
// At the end the record must be as it was at the start, or recut starts again.
//
// # The lineage
//
// A job begins with plan 1 and goes on with a rest, and perhaps a rest of that. Besides
// the events of package progress the record of a plan knows these words:
//
//	continued CODE N FOLDER   the plan goes on as CODE, number N, in FOLDER
//	used N                    numbers up to N are used by plans that were withdrawn
//	booked RACK               the plan is booked on the rack RACK, if the rack says so too
//
// A rest counts as soon as its predecessor's record says "continued"; its pages follow.
// Taking that entry back withdraws the rest. Numbers and folders are never used twice.
// Whether a booking holds is up to the rack's own history: a "rack undo" of it reopens
// the plan.
//
// A plan with a rest takes no reports, no undo and no booking: two plans of one piece of wood
// would count its offcuts twice. A code, once printed, is read from plan.sawbill and never
// computed again. The same holds for steps, marks and names of offcuts.
//
// Two folders are always locked in the order of the lineage, and a rack after them.
package shop
