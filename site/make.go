package site

import (
	"cmp"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/pdf"
)

// A Folder is a programme folder on disk: programme.yaml, jobs, key and ledger, and where the output goes.
type Folder struct {
	Path, Out string
	Browser   *pdf.Browser // prints the PDF files; nil for none
}

// Make is the life of the given plans, all of one programme: remember their addresses, build them in memory, and write them. The ledger is written
// before the output, so that no address is ever on paper that the ledger does not know. Today only ever says when dates changed.
// Progress hears the code of each job as it is built. It returns the paths of the files that changed.
func (f Folder) Make(plans []notices.Plan, today notices.Date, progress func(code string)) ([]string, error) {
	key, err := ReadKey(filepath.Join(f.Path, KeyFile))
	if err != nil {
		return nil, err
	}
	release, err := f.hold()
	if err != nil {
		return nil, err
	}
	defer release()
	path := filepath.Join(f.Path, LedgerFile)
	ledger, err := ReadLedger(path)
	if err != nil {
		return nil, err
	}
	for _, plan := range plans {
		if err := checkKey(ledger, key, plan.Code); err != nil {
			return nil, err
		}
		ledger = Remember(ledger, plan, key, today)
	}
	output, err := f.build(plans, ledger, key, progress)
	if err != nil {
		return nil, err
	}
	if err := WriteLedger(path, ledger); err != nil {
		return nil, err
	}
	return Write(f.Out, output)
}

// checkKey refuses a key that is not the one behind the addresses that the ledger remembers.
func checkKey(ledger Ledger, key Key, code string) error {
	known, ok := ledger.Job(code)
	if !ok || known.Token == Token(key, code) {
		return nil
	}
	return fmt.Errorf("job %s was made with another key: the ledger remembers its pages under %s, and this key would give them another address. Put"+
		" the right %s back, or the ledger that belongs to this key", code, known.Token, KeyFile)
}

// MakeWithoutCodes makes sheets with phone numbers only, for the night when the key is on another laptop. It reads and changes no ledger, and
// leaves the pages of earlier makes as they are.
func (f Folder) MakeWithoutCodes(plans []notices.Plan, progress func(code string)) ([]string, error) {
	output, err := f.build(plans, Ledger{}, "", progress)
	if err != nil {
		return nil, err
	}
	return Write(f.Out, output)
}

// build makes everything that Write needs, in memory.
func (f Folder) build(plans []notices.Plan, ledger Ledger, key Key, progress func(code string)) (Output, error) {
	programme := plans[0].Programme
	kit, err := NewKit(programme, key, os.ReadFile)
	if err != nil {
		return Output{}, err
	}
	if err := Repair(f.Out); err != nil {
		return Output{}, err
	}
	before := os.DirFS(f.Out)
	index, err1 := LoadIndex(before)
	earlier, err2 := LoadRecords(before)
	if err := cmp.Or(err1, err2); err != nil {
		return Output{}, err
	}
	var output Output
	var made []JobRecord
	for _, plan := range plans {
		progress(plan.Code)
		unit, err := Build(plan, ledger, kit, recordOf(earlier, plan.Code))
		if err != nil {
			return Output{}, err
		}
		if unit, err = f.withPDFs(unit, kit); err != nil {
			return Output{}, err
		}
		output.Jobs = append(output.Jobs, unit)
		made = append(made, unit.Record)
	}
	output.Shared, err = shared(kit, programme, MergeRecords(earlier, made), index)
	return output, err
}

func recordOf(records []JobRecord, code string) JobRecord {
	i := slices.IndexFunc(records, func(r JobRecord) bool { return r.Code == code })
	if i < 0 {
		return JobRecord{}
	}
	return records[i]
}

// shared are the files outside the jobs' folders. Without codes there are no addresses, and the site stays as it is.
func shared(kit Kit, programme notices.Programme, records []JobRecord, index Index) (Files, error) {
	files := fontFiles()
	list, err := desk(records)
	if err != nil {
		return nil, err
	}
	sheets, err := contact(records)
	if err != nil {
		return nil, err
	}
	files["print/index.html"], files["print/contact.html"] = list, sheets
	files["print/"+calendarFile] = calendar(programme, records)
	if kit.Key != "" {
		pages, err := press{kit: kit, programme: programme}.sharedPages()
		if err != nil {
			return nil, err
		}
		maps.Copy(files, pages)
	}
	return NewShared(files, records, index), nil
}

// OutdatedPaper counts the sheets of these jobs that hang or were handed over and say something else than the job now, as the last make knew.
func (f Folder) OutdatedPaper(plans []notices.Plan) (int, error) {
	records, err := LoadRecords(os.DirFS(f.Out))
	if err != nil {
		return 0, err
	}
	count := 0
	for _, plan := range plans {
		count += len(recordOf(records, plan.Code).PutRight)
	}
	return count, nil
}
