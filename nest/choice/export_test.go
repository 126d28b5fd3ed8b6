package choice

// Unlimited returns the total with all offers and all stock on hand.
func (c *Comparison) Unlimited() Total {
	t, _ := c.total(func(o Choice) bool { return o.All })
	return t
}
