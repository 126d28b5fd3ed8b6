package stock

// Money is a whole number of cents of the job's one currency.
type Money int64
