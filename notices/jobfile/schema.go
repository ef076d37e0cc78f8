package jobfile

import "encoding/json"

// JobSchema describes job files to editors, which then complete keys and words and show the questions. It is JSON Schema draft-07, the one
// that the YAML extensions of editors know best. Name it in the first line of a job file:
//
//	# yaml-language-server: $schema=../job.schema.json
func JobSchema() []byte { return schemaFile("A job: one house and the work on it", JobFields) }

// ProgrammeSchema describes programme.yaml, as JobSchema does job files.
func ProgrammeSchema() []byte { return schemaFile("The programme", programmeFields) }

// A schema is a JSON object; its keys come out in the order of the alphabet.
type schema map[string]any

func schemaFile(title string, fields []Field) []byte {
	s := objectSchema(fields)
	s["$schema"] = "http://json-schema.org/draft-07/schema#"
	s["title"] = title
	text, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		panic("a schema holds texts, numbers and lists only: " + err.Error())
	}
	return append(text, '\n')
}

func objectSchema(fields []Field) schema {
	properties, required := schema{}, []string{}
	for _, f := range fields {
		properties[f.Key] = f.schema()
		if f.required {
			required = append(required, f.Key)
		}
	}
	return schema{"type": "object", "additionalProperties": false, "properties": properties, "required": required}
}

func (f Field) schema() schema {
	s := f.shape()
	s["description"] = f.Question
	if f.example != "" {
		s["description"] = f.Question + " For example: " + f.Key + ": " + f.example
	}
	return s
}

func (f Field) shape() schema {
	switch f.Holds {
	case HoldsNumber:
		return f.either(schema{"type": "integer", "minimum": f.min_, "maximum": f.max_})
	case HoldsList:
		return f.listSchema(f.oneLine())
	case HoldsLists:
		return f.listSchema(schema{"type": "array", "minItems": 1, "items": f.oneLine()})
	case HoldsListOrUnknown:
		return schema{"anyOf": []schema{f.listSchema(f.oneLine()), {"const": "unknown"}}}
	case HoldsObject:
		return objectSchema(f.Fields)
	case HoldsObjects:
		return f.listSchema(objectSchema(f.Fields))
	}
	return f.oneLine()
}

func (f Field) listSchema(items schema) schema {
	return schema{"type": "array", "minItems": f.min_, "items": items}
}

// oneLine is a text. Editors take some texts for numbers, such as the phone 311 or the name 1860, and a job file takes them as texts.
func (f Field) oneLine() schema {
	switch {
	case f.pattern != "":
		return f.either(schema{"type": []string{"string", "number"}, "pattern": f.pattern})
	case f.words != nil:
		return schema{"enum": f.words}
	}
	return schema{"type": []string{"string", "number", "boolean"}}
}

// either offers the words of the field beside something else.
func (f Field) either(other schema) schema {
	if f.words == nil {
		return other
	}
	return schema{"anyOf": []schema{{"enum": f.words}, other}}
}
