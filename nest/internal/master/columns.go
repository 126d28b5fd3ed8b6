package master

import "slices"

// columns holds the columns of a program one after another in memory, since pricing reads them
// far oftener than anything changes.
type columns struct {
	cost   []float64
	scale  []float64 // 1 / (1 + cost)
	ends   []int32   // of each column, in rows and values
	rows   []int32
	values []float64
}

func (c *columns) add(one Column) int {
	for _, e := range one.Entries {
		c.rows = append(c.rows, int32(e.Row))
		c.values = append(c.values, e.Value)
	}
	c.cost = append(c.cost, one.Cost)
	c.scale = append(c.scale, 1/(1+one.Cost))
	c.ends = append(c.ends, int32(len(c.rows)))
	return len(c.cost) - 1
}

// entries returns the rows of column j and its value in each.
func (c *columns) entries(j int) (rows []int32, values []float64) {
	from, to := c.span(j)
	return c.rows[from:to], c.values[from:to]
}

func (c *columns) count(j int) int {
	from, to := c.span(j)
	return int(to - from)
}

func (c *columns) span(j int) (from, to int32) {
	if j > 0 {
		from = c.ends[j-1]
	}
	return from, c.ends[j]
}

// grow makes room for n more columns.
func (c *columns) grow(n int) {
	c.cost = slices.Grow(c.cost, n)
	c.scale = slices.Grow(c.scale, n)
	c.ends = slices.Grow(c.ends, n)
	c.rows = slices.Grow(c.rows, 8*n)
	c.values = slices.Grow(c.values, 8*n)
}
