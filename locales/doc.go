// Package locales says things in a language: texts, dates, hours, lists and numbers.
//
// # The model, in order
//
// A [Speaker] speaks one language and no other. [Open] makes one from a tag such as "vi"; [Tags] lists those there are. What a speaker lacks is
// an error, never a sentence in another language.
//
// A bundle is the file of one language, bundles/<tag>.yaml. It starts with the section about, which says who checked the texts; everything else
// is messages, in sections as deep as is handy. The message id is the path, joined by dots:
//
//	about: {state: reviewed, reviewed_by: Ana Ruiz, reviewed_on: 2027-02-01}
//	sign:
//	  keep_out: Keep out until we **take this sign down**.
//	  call: Questions? Call {{.Name}} at {{.Phone}}.
//	letter:
//	  homes:
//	    one: "{{.Homes}} home shares this wall."
//	    other: "{{.Homes}} homes share this wall."
//
// A message is a text, or one text for each plural category that CLDR gives its language: "homes" above has one and other in English, needs many
// as well in Spanish, and other alone in Vietnamese.
//
// A text is one paragraph. Its Markdown is emphasis, links and line breaks; its only template language is the placeholder {{.Name}}. There is no
// HTML in it. [Speaker.HTML] renders it; [Speaker.Text] gives a text without Markdown as it is, for headlines and alt text. Everything
// that can be wrong with a text is found by Open, all of it at once.
//
// A [Value] takes the place of a placeholder: [Plain] text, a [Link], or a [Count], which also chooses the plural form. Names, phones and addresses are typed
// by strangers in any script. So a value never meets goldmark: while the text is rendered a private-use character stands for it, and only then comes
// the value, escaped and isolated in a bdi element. It appears as typed and does nothing.
//
// # Two layers
//
// A programme may say some messages in its own words: Open takes a folder of its own <tag>.yaml files. Such a file overrides messages that we
// have, with the same placeholders; it can add neither. Its section about then speaks for all that is printed in that language.
//
// # The coordinator's sheet
//
// bundles/coordinator.yaml holds the texts of the sheet for the coordinator, in English alone. [OpenCoordinator] opens it.
//
// # Dates and numbers
//
// cldr.json holds what the Unicode Common Locale Data Repository (CLDR) says about each language, on the Gregorian calendar, with the 12-hour clock.
// gen/cldr.mjs makes it and says how; a further language is one line there and one bundle.
package locales
