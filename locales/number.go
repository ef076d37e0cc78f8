package locales

import (
	"math"
	"strconv"
	"strings"
)

// number is a number with at most three decimals, in groups of three digits: "1,234.5", in Vietnamese "1.234,5".
func (s *Speaker) number(n float64) string {
	n = math.Round(n*1000) / 1000
	whole, fraction, broken := strings.Cut(strconv.FormatFloat(math.Abs(n), 'f', -1, 64), ".")
	text := grouped(whole, s.locale.Group)
	if broken {
		text += s.locale.Decimal + fraction
	}
	if n < 0 {
		text = s.locale.Minus + text
	}
	return text
}

func grouped(digits, separator string) string {
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + separator + digits[i:]
	}
	return digits
}
