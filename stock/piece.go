package stock

// Piece is one piece on the rack: a sheet, a board or an offcut, with the id
// that is written on it.
type Piece struct {
	// ID is short, names one piece of its rack and is never given to another.
	ID       string
	Name     string // as it was bought; of an offcut mostly empty
	Kind     Kind
	Material string
	// Length runs along the face grain of a sheet unless Grain says otherwise.
	Length, Width, Thickness Length
	Grain                    Grain
	Note                     string
	From                     string // the job and plan, or the place where it was bought
	Since                    string // the day it came onto the rack, "2026-03-05"; may be empty
}

// Stock is p as a job cuts it: on hand, named by its id.
func (p Piece) Stock() Stock {
	return Stock{
		Name: p.ID, Kind: p.Kind, Material: p.Material,
		Length: p.Length, Width: p.Width, Thickness: p.Thickness,
		Grain: p.Grain, Count: 1, OnHand: true,
	}
}
