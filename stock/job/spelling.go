package job

import "sawbill/stock"

// spelled is a key as it is known: British spelling is understood.
func spelled(key string) string {
	switch key {
	case "mitre", "mitres":
		return stock.American(key)
	}
	return key
}
