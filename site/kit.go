package site

import (
	"fmt"

	"example.org/doorleaf/locales"
	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
)

// A Kit is what every job of a programme needs beside its plan.
type Kit struct {
	key      Key // "" for sheets without codes
	speakers map[notices.Language]*locales.Speaker
	own      *locales.Speaker
	shelf    *fit.Shelf
}

// NewKit opens every language that doorleaf has, because a page of an earlier make may need one that the programme has dropped since.
// It is an error when the programme refuses drafts and one of its languages is a draft. Read gives the bytes of a font file of this computer, as
// os.ReadFile does.
func NewKit(programme notices.Programme, key Key, read func(path string) ([]byte, error)) (Kit, error) {
	kit := Kit{key: key, speakers: map[notices.Language]*locales.Speaker{}, shelf: fit.NewShelf(read)}
	for _, tag := range locales.Tags() {
		speaker, err := locales.Open(tag, nil)
		if err != nil {
			return Kit{}, err
		}
		kit.speakers[notices.Language(tag)] = speaker
	}
	own, err := locales.OpenCoordinator()
	if err != nil {
		return Kit{}, err
	}
	kit.own = own
	return kit, kit.checkDrafts(programme)
}

func (kit Kit) checkDrafts(programme notices.Programme) error {
	if !programme.RefuseDrafts {
		return nil
	}
	for _, l := range programme.Languages {
		if kit.speakers[l].State().Draft {
			return fmt.Errorf("the %s texts are a draft that no fluent speaker has signed, and programme.yaml says unchecked_translations: refuse; have them checked, or write print_marked", englishName(kit, l))
		}
	}
	return nil
}

// englishName is the name of a language for the coordinator, and for the sentence to say on the phone.
func englishName(kit Kit, l notices.Language) string { return kit.own.NameOf(string(l)) }

// coordinator says what the coordinator reads, in English.
func (kit Kit) coordinator() *voice { return &voice{Speaker: kit.own, own: kit.own} }
