package locales

// Comma is what stands between two parts of a sentence, with its space: ", ", in Arabic "، ", in Chinese "，" alone.
func (s *Speaker) Comma() string { return s.locale.Comma }

// Colon is what stands between a label and what it labels, with its space: ": ", in Chinese "：" alone.
func (s *Speaker) Colon() string { return s.locale.Colon }

// Through is what stands between the first and the last day of a span: " – ", in Chinese "至".
func (s *Speaker) Through() string { return s.locale.Through }

// Isolated is a name or a code in a plain text of this language. From right to left, where it would turn the words around it or be turned by them,
// it stands between a first strong isolate and its end (UAX #9), which nobody sees.
func (s *Speaker) Isolated(text string) string {
	if s.locale.Direction == "rtl" {
		return "\u2068" + text + "\u2069"
	}
	return text
}
