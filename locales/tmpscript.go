package locales

func (s *Speaker) Script() string { return "Latn" }
