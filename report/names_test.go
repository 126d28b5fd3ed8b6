package report

import "testing"

func TestNamesThatDifferInTheirNumberAreToldOnce(t *testing.T) {
	for _, tt := range []struct {
		names []string
		want  string
	}{
		{[]string{"top"}, "top"},
		{[]string{"drawer side, drawer 1", "top", "drawer side, drawer 2", "drawer side, drawer 3"}, "drawer side, drawer 1–3; top"},
		{[]string{"rail 1", "rail 3", "stile 1"}, "rail 1, 3; stile 1"},
		{[]string{"rail 01", "2x4", "7", ""}, "rail 01; 2x4; 7; "},
		{[]string{"rail 99999999999999999999"}, "rail 99999999999999999999"},
	} {
		if got := namesInShort(tt.names); got != tt.want {
			t.Errorf("%q, want %q", got, tt.want)
		}
	}
}

func TestNumbersInARowAreToldByTheirEnds(t *testing.T) {
	for want, numbers := range map[string][]int{"": nil, "3": {3}, "6, 7": {6, 7}, "1–3, 5": {1, 2, 3, 5}, "1, 3–6": {1, 3, 4, 5, 6}} {
		if got := ranges(numbers); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
