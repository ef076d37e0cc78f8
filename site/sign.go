package site

import (
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
	"example.org/doorleaf/site/setting"
	"example.org/doorleaf/templates"
)

// addSign lays a sign out so that its legend reaches its reader.
func (p press) addSign(v *voice, sheet notices.Sheet, face notices.Face, view templates.Face, made *printing) error {
	text := p.signText(v, face, view.Call)
	if v.err != nil {
		return v.err
	}
	papers := setting.Papers{Usual: made.paper}
	for _, larger := range p.programme.LargerPaper {
		papers.Larger = append(papers.Larger, string(larger))
	}
	design, err := p.posters.Sign(v.cast, view, text, papers, float64(sheet.ReadFrom))
	if err != nil {
		return err
	}
	made.sides, made.paper = design.Sides, design.Paper
	made.record.ReadingDistanceFt, made.record.PoorDistanceFt = design.Reach(fit.Good), design.Reach(fit.Poor)
	made.record.CapHeightMM, made.record.SignalHeightMM = design.MessageMM(), design.SignalMM()
	made.record.Letters = v.cast.Sign.Letters()
	return nil
}

func (p press) signText(v *voice, face notices.Face, call templates.Call) setting.SignText {
	text := setting.SignText{Area: strings.Join(v.places(face.Place), " "), Contact: []string{call.AskFor, p.programme.Name, call.Speaks}, Marks: marks(face.Marks)}
	for _, m := range face.Legend {
		text.Legend = append(text.Legend, v.plain(m))
	}
	for _, m := range face.Blocks[0].Lines {
		text.Orders = append(text.Orders, v.plain(m))
	}
	return text
}
