// Package rack keeps what is on hand: sheets, boards and offcuts, in one plain
// file that its owner may read and edit, and that no crash leaves half written.
//
// Beside the rack's file lies its history, one line for each change, from which
// every earlier state can be had again. A change is made in this order, by one
// program at a time:
//
//	the lock is taken
//	the new file is written beside the old one, and synced
//	a line is added to the history, and synced     <- now the change is made
//	the new file takes the place of the old one
//	the folder is synced
//
// Whoever next reads or changes the rack puts right what a killed program left:
//
//   - If the line is torn or not there, nothing was changed: the torn line is cut off and
//     the new file dropped.
//   - If the line is whole, the new file is put in place.
//   - If the old file was edited in between, the edit counts. The history says
//     that the change was given up, then that the file was edited.
//
// So readers always see the state that the history promises. Where they may not write, or
// another program holds the lock, they take it from the new file.
//
// A file that differs from the last state of the history, with no new file
// beside it, was edited by hand: the next change first records that.
//
// The files of a rack called rack.toml are rack.toml.history, .rack.toml.new
// and .rack.toml.lock. The lock's file holds nothing. Neither hidden file stays once
// a change is made or refused.
package rack
