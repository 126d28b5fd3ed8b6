package cutplan

// RandomJob is for tests that saw what is planned.
var RandomJob = randomJob
