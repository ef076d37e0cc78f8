package ledger

import (
	"bytes"
	"slices"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"example.org/doorleaf/notices/jobfile"
)

const saveAgain = "open it in a spreadsheet and save it as CSV UTF-8"

// decoded is the text of a file in the encodings in which spreadsheets save: UTF-8 and UTF-16, each with a byte order mark or without; Windows-1252, which plain 'CSV' is on
// Windows in the United States; and Mac Roman, which it is on a Mac, where lines end in CR alone (donatstudios.com, "CSV: An Encoding Nightmare"; the line ends are common
// practice, no source). A file that mixes UTF-8 with other bytes is refused: a wrong guess would change people's names. The problem lacks only the name of the file.
func decoded(data []byte) (string, *jobfile.Problem) {
	if isWorkbook(data) {
		return "", &jobfile.Problem{Line: 1, Column: 1, Says: "this is a spreadsheet's own file, not comma-separated text", Mend: saveAgain}
	}
	if endian, found := utf16Endian(data); found {
		return through(unicode.UTF16(endian, unicode.UseBOM), data), nil
	}
	text, marked := bytes.CutPrefix(data, []byte(utf8Mark))
	if utf8.Valid(text) {
		return string(text), nil
	}
	if bad, some := utf8Parts(text); marked || some {
		return "", refusedByte(text, bad, "the file is UTF-8 text, but this character is not")
	}
	return fromCodePage(text)
}

const utf8Mark = "\uFEFF"

// isWorkbook knows the first bytes of a ZIP file, which xlsx, ods and numbers files are, and those of xls.
func isWorkbook(data []byte) bool {
	return bytes.HasPrefix(data, []byte("PK\x03\x04")) || bytes.HasPrefix(data, []byte("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"))
}

// utf16Endian reports UTF-16 by its mark, or by its zero bytes: the first line has the names of columns, whose letters have one each.
func utf16Endian(data []byte) (unicode.Endianness, bool) {
	switch {
	case bytes.HasPrefix(data, []byte("\xFF\xFE")):
		return unicode.LittleEndian, true
	case bytes.HasPrefix(data, []byte("\xFE\xFF")):
		return unicode.BigEndian, true
	}
	var zeros [2]int // at even and at odd places
	start := data[:min(len(data), 64)]
	for i, b := range start {
		if b == 0 {
			zeros[i%2]++
		}
	}
	half := max(1, len(start)/4) // of the pairs of bytes
	little, big := zeros[1] >= half, zeros[0] >= half
	return unicode.Endianness(little), little != big
}

// through decodes; what is not of the encoding becomes U+FFFD, which no cell may hold.
func through(e encoding.Encoding, data []byte) string {
	text, _ := e.NewDecoder().Bytes(data)
	return string(text)
}

// utf8Parts is the place of the first byte that is not UTF-8, and reports whether there are characters of several bytes that are.
func utf8Parts(data []byte) (bad int, some bool) {
	bad = -1
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 && bad < 0 {
			bad = i
		}
		some = some || size > 1
		i += size
	}
	return bad, some
}

func fromCodePage(data []byte) (string, *jobfile.Problem) {
	if bytes.ContainsRune(data, '\r') && !bytes.ContainsRune(data, '\n') {
		return through(charmap.Macintosh, data), nil
	}
	if bad := slices.IndexFunc(data, undefined); bad >= 0 {
		return "", refusedByte(data, bad, "this character is in none of the encodings in which spreadsheets save")
	}
	return through(charmap.Windows1252, data), nil
}

// undefined bytes have no character in Windows-1252.
func undefined(b byte) bool { return strings.IndexByte("\x81\x8D\x8F\x90\x9D", b) >= 0 }

func refusedByte(data []byte, at int, says string) *jobfile.Problem {
	before := lineEnds.Replace(string(data[:at]))
	line := before[strings.LastIndexByte(before, '\n')+1:]
	return &jobfile.Problem{Line: strings.Count(before, "\n") + 1, Column: utf8.RuneCountInString(line) + 1, Text: string(data[at : at+1]), Says: says, Mend: saveAgain}
}

// lineEnds makes the three ends of lines one.
var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n")
