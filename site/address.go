package site

import (
	"strings"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/tree"
)

// An address is where one page of a job lies.
type address struct {
	base, token string
	language    notices.Language
	page        notices.PageKind
}

// below is the address below the base: "482109371158/ES/WINDOWS/", or "482109371158/" where the reader chooses a language.
func (a address) below() string {
	if a.page == "" {
		return a.token + "/"
	}
	return a.token + "/" + capitals(a.language) + "/" + string(a.page) + "/"
}

// capitals are a language as an address has it: "ES", "ZH-HANS". The hyphen is among the alphanumeric characters of a code too (ISO/IEC 18004, 7.3.4).
func capitals(l notices.Language) string { return strings.ToUpper(string(l)) }

// languageOf is the language of an address below the base, and English where there is none.
func languageOf(below string) notices.Language {
	parts := strings.Split(below, "/")
	if l, known := notices.LanguageNamed(parts[min(1, len(parts)-1)]); known {
		return l
	}
	return notices.English
}

// code is what the QR code holds: capitals, digits and signs alone, whatever the case of the base. Schemes and hosts ignore case (RFC 3986, 6.2.2.1).
func (a address) code() string { return strings.ToUpper(a.url()) }

// url is the whole address.
func (a address) url() string { return a.base + "/" + a.below() }

// host is what a reader types before the digits: "leaf.example.org/".
func (a address) host() string { return strings.TrimPrefix(a.base, "https://") + "/" }

// file is the path of the page in the output folder.
func (a address) file() string { return pageFile(a.below()) }

// pageFile is the file behind an address below the base.
func pageFile(below string) string { return tree.WebPath(below + "index.html") }
