package setcover

import (
	"math/bits"

	"sawbill/nest/internal/instance"
)

// AreaPrices returns the areas as prices, shifted so that sums fit. Values are rounded down and
// capacities up.
func AreaPrices(in *instance.Instance) Prices {
	var p Prices
	shift := uint(0)
	for _, st := range in.Stock {
		shift = max(shift, uint(max(0, bits.Len64(uint64(st.L*st.W))-30)))
	}
	for _, st := range in.Stock {
		p.Capacity = append(p.Capacity, (st.L*st.W-1)>>shift+1)
	}
	for _, kd := range in.Kinds {
		p.Values = append(p.Values, kd.L*kd.W>>shift)
	}
	return p
}
