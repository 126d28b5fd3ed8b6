package casework

import (
	"sawbill/stock/casework/assembly"
	"sawbill/stock/casework/checks"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/sizes"
	"sawbill/stock/casework/solid"
)

// Designs and their faults.
type (
	Design     = design.Design
	Carcass    = design.Carcass
	Frame      = design.Frame
	Back       = design.Back
	Base       = design.Base
	Divider    = design.Divider
	Shelf      = design.Shelf
	Drawer     = design.Drawer
	Door       = design.Door
	Edging     = design.Edging
	LooseTenon = design.LooseTenon
	Joinery    = design.Joinery
	Coating    = design.Coating
	Bay        = design.Bay
	Opening    = design.Opening
	Contents   = design.Contents
	DrawerBox  = design.DrawerBox

	Given[T any] = design.Given[T]
	Length       = design.Length
	Count        = design.Count
	Word         = design.Word

	Context    = design.Context
	Tools      = design.Tools
	Dowel      = design.Dowel
	Material   = design.Material
	Properties = design.Properties
	Property   = design.Property
	Caution    = design.Caution
)

// UsualTools are those of a shop that works in units.
var UsualTools = design.UsualTools

// MaterialsOf gathers the materials of a job's stock, and Wood the properties of one of Woods.
var (
	MaterialsOf = design.MaterialsOf
	Wood        = design.Wood
	Woods       = design.Woods
)

// Where pieces stand, and what is laid out on them.
type (
	Axis    = solid.Axis
	Point   = solid.Point
	Solid   = solid.Solid
	Role    = solid.Role
	Side    = solid.Side
	Extent  = solid.Extent
	Face    = solid.Face
	Mark    = solid.Mark
	Spot    = solid.Spot
	Measure = solid.Measure
)

const (
	SlideLine  = solid.SlideLine
	ShelfPins  = solid.ShelfPins
	HandleHole = solid.HandleHole
	Hinge      = solid.Hinge
	Catch      = solid.Catch

	X = solid.X
	Y = solid.Y
	Z = solid.Z

	Left  = solid.Left
	Right = solid.Right
	Front = solid.Front
	Rear  = solid.Rear
	Lower = solid.Lower
	Upper = solid.Upper
	Inner = solid.Inner
	Outer = solid.Outer
	Both  = solid.Both

	Broad = solid.Broad
	Edge  = solid.Edge
	End   = solid.End
)

// Results.
type (
	Space    = sizes.Space
	Storage  = pieces.Storage
	Step     = assembly.Step
	Unit     = assembly.Unit
	Item     = assembly.Item
	Check    = checks.Check
	Verdict  = checks.Verdict
	Figure   = checks.Figure
	Hardware = checks.Hardware
	Finish   = checks.Finish
	Takeoff  = checks.Takeoff
	Weight   = checks.Weight
	Surfaces = checks.Surfaces
	Area     = checks.Area
)

const (
	Within   = checks.Within
	Beyond   = checks.Beyond
	AllowFor = checks.AllowFor
	Stands   = checks.Stands
	Tips     = checks.Tips
)
