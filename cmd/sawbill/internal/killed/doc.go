// Package killed has only tests. They kill the program itself while it changes a shop's
// files, and look at what readers see then and what the next run leaves.
//
// Half of the kills come between two system calls that change the disk, each of them in
// its turn; strace places them, the program has no hooks. The other half come at random
// instants.
package killed
