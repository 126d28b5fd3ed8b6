package stock

// Nearest returns the known word that word was most likely meant to be, or
// false when none is near.
func Nearest(word string, known []string) (string, bool) { panic("stock: not written yet") }
