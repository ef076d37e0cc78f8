package notices

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"unicode"
)

var (
	phonePattern = regexp.MustCompile(`^\+?[0-9(][0-9(). -]*$`)

	// The North American plan: 311 and its like; an exchange of three digits and a line of four; the same behind an area code. Area code
	// and exchange start with 2 to 9. Source: North American Numbering Plan Administrator (nanpa.com), from memory.
	servicePattern = regexp.MustCompile(`^[2-9]11$`)
	numberPattern  = regexp.MustCompile(`^(?:1?([2-9]\d\d))?([2-9]\d\d)(\d{4})$`)
)

// ParsePhone reads a North American number as people write it: 555-0142, (612) 555-0142, +1 612.555.0142 or 311.
func ParsePhone(text string) (Phone, error) {
	if !phonePattern.MatchString(text) {
		return "", errors.New(phoneSigns(text))
	}
	digits := onlyDigits(text)
	if strings.HasPrefix(text, "+") && !strings.HasPrefix(digits, "1") {
		return "", errors.New("after + write 1, the area code and seven digits; numbers of other countries are not known here")
	}
	if servicePattern.MatchString(digits) && digits == text {
		return Phone(digits), nil
	}
	parts := numberPattern.FindStringSubmatch(digits)
	if parts == nil {
		return "", errors.New(phoneDigits(digits))
	}
	if servicePattern.MatchString(parts[1]) || servicePattern.MatchString(parts[2]) {
		return "", errors.New("neither the area code nor the three digits after it can end in 11; check the number")
	}
	return Phone(digits), nil
}

func phoneDigits(digits string) string {
	switch len(digits) {
	case 7, 10, 11:
		return "the area code and the three digits after it start with 2 to 9; check the number"
	}
	return fmt.Sprintf("it has %d digits; write 7, 10 with the area code, 11 with a 1 in front, or a service such as 311", len(digits))
}

// phoneSigns says what to do about signs that no phone number holds. Letters are turned into the digits of their keys.
func phoneSigns(text string) string {
	if dialled := strings.Map(key, text); dialled != text {
		if _, err := ParsePhone(dialled); err == nil {
			return "write digits, not letters; on the keys that is " + dialled
		}
	}
	return "write digits with spaces, ( ) - or . between them, such as 555-0142, and no extension"
}

// key is the digit under a letter, as on every phone (ITU-T E.161, from memory).
func key(letter rune) rune {
	const digits = "22233344455566677778889999"
	if letter = unicode.ToLower(letter); letter >= 'a' && letter <= 'z' {
		return rune(digits[letter-'a'])
	}
	return letter
}

func onlyDigits(text string) string {
	return strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, text)
}

// Written is the number as people read it: "311", "555-0142" or "(612) 555-0142".
func (p Phone) Written() string {
	parts := numberPattern.FindStringSubmatch(string(p))
	switch {
	case parts == nil:
		return string(p)
	case parts[1] == "":
		return parts[2] + "-" + parts[3]
	}
	return fmt.Sprintf("(%s) %s-%s", parts[1], parts[2], parts[3])
}

// Dial is the number as a link: tel:311, tel:5550142 or tel:+16125550142 (RFC 3966).
func (p Phone) Dial() string {
	switch len(p) {
	case 10:
		return "tel:+1" + string(p)
	case 11:
		return "tel:+" + string(p)
	}
	return "tel:" + string(p)
}
