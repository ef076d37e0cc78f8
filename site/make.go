package site

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/disk"
	"example.org/doorleaf/site/ledger"
	"example.org/doorleaf/site/lists"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/site/tree"
)

// A Make is what a make did.
type Make struct {
	Changed  []string  // paths of the files that changed
	Wrong    int       // papers that are out and say something else now
	MaybeOut int       // sheets whose last version nobody noted as printed, and that say something else now
	Missing  []Missing // pages on paper that are not in the output
}

// Make is the life of the given plans, all of one programme. Each job is built and staged on its own, so no more than one is in memory; then the ledger is
// written, and then everything is put in its place. Up to the ledger nothing has moved, and an error means that nothing changed; whoever is killed after it has
// left a journal, from which the next command finishes. Progress hears the code of each job as it is built.
func (p Programme) Make(plans []notices.Plan, progress func(code string)) (Make, error) {
	key, err := readKey(filepath.Join(p.Path, KeyFile))
	if err != nil {
		return Make{}, err
	}
	return p.make(plans, key, progress)
}

// MakeWithoutCodes makes sheets with phone numbers only, for the night when the key is on another laptop, and leaves the pages of earlier makes as they are.
// Where the ledger is away as well, nothing is remembered.
func (p Programme) MakeWithoutCodes(plans []notices.Plan, progress func(code string)) (Make, error) {
	return p.make(plans, "", progress)
}

func (p Programme) make(plans []notices.Plan, key Key, progress func(code string)) (Make, error) {
	if key != "" || p.hasLedger() {
		release, err := p.hold()
		if err != nil {
			return Make{}, err
		}
		defer release()
		if err := p.raiseSign(); err != nil {
			return Make{}, err
		}
	}
	done, err := p.stageAndSwap(plans, key, progress)
	if errors.Is(err, errUnfinished) {
		return done, err
	}
	os.Remove(p.sign()) // what stays is looked into by the next command, and removed
	if err != nil {
		return Make{}, fmt.Errorf("nothing was changed: %w", err)
	}
	done.Missing = p.MissingPages()
	return done, nil
}

// errUnfinished: the ledger has the make, and the output does not yet.
var errUnfinished = errors.New("the make is not finished")

// raiseSign says where a make is under way, before anything of it can be left behind.
func (p Programme) raiseSign() error {
	out, err := filepath.Abs(p.Out)
	if err == nil {
		err = disk.Replace(p.sign(), []byte(out))
	}
	if err != nil {
		return fmt.Errorf("nothing was changed: the ledger in %s cannot be written (%w); make room on the disk, or check who may write there", p.Path, disk.Why(err))
	}
	return nil
}

func (p Programme) stageAndSwap(plans []notices.Plan, key Key, progress func(code string)) (Make, error) {
	folder, err := tree.Open(p.Out)
	if err != nil {
		return Make{}, err
	}
	defer folder.Close()
	if err := p.endLeft(folder); err != nil {
		return Make{}, err
	}
	s := staging{Programme: p, folder: folder, done: Make{}}
	if s.kit, err = NewKit(plans[0].Programme, key, os.ReadFile); err != nil {
		return Make{}, err
	}
	if s.earlier, err = record.Load(folder.FS()); err != nil {
		return Make{}, err
	}
	for _, plan := range plans {
		progress(plan.Code)
		if err := s.stage(plan); err != nil {
			return Make{}, err
		}
	}
	if err := s.stageShared(plans[0].Programme); err != nil {
		return Make{}, err
	}
	return s.rememberAndSwap()
}

// A staging is a make on its way.
type staging struct {
	Programme
	folder  *tree.Folder
	kit     Kit
	earlier []record.Job // in the output before
	made    []record.Job
	lines   []ledger.Entry
	done    Make
}

// stage builds one job and prepares its files.
func (s *staging) stage(plan notices.Plan) error {
	earlier := recordOf(s.earlier, plan.Code)
	before, err := s.remembered(plan.Code)
	if err != nil {
		return err
	}
	if err := s.check(plan, before, earlier); err != nil {
		return err
	}
	after, err := before.Made(makeOf(plan, s.kit.key, onPaper(earlier)))
	if err != nil {
		return err
	}
	built, err := Build(plan, after, s.kit)
	if err == nil {
		built, err = s.withPDFs(built)
	}
	if err != nil {
		return err
	}
	unit, made := record.Unit(built.Record, built.Files, earlier)
	s.made = append(s.made, made)
	if s.hasLedger() {
		s.lines = append(s.lines, after.Pending()...)
	}
	s.done.Wrong += len(after.Wrong())
	s.done.MaybeOut += maybeOut(before, after)
	return s.folder.Stage(unit)
}

// remembered is what the ledger knows of a job. Paper without codes can do without a ledger too: nothing on it could become a dead end.
func (s *staging) remembered(code string) (ledger.Job, error) {
	if s.kit.key == "" && !s.hasLedger() {
		return ledger.Job{Code: code}.By(s.Writer), nil
	}
	return s.Ledger(code)
}

// check refuses a key that is not the one behind the addresses that are on paper, and a ledger that has lost the job; it doubts days and addresses.
func (s *staging) check(plan notices.Plan, known ledger.Job, earlier record.Job) error {
	if !known.IsKnown() && earlier.Token != "" && s.hasLedger() {
		return fmt.Errorf("the output has sheets and pages of job %s, and the ledger does not know it: its folder %s/%s is missing. Copy it from the laptop or the backup that"+
			" has the newest one; or run doorleaf restore with its job file, which fills in what the output knows", plan.Code, ledger.FolderName, plan.Code)
	}
	if s.kit.key != "" && known.Token != "" && known.Token != token(s.kit.key, plan.Code) {
		return fmt.Errorf("job %s was made with another key: the ledger remembers its pages under %s, and this key would give them another address. Put"+
			" the right %s back, or the ledger that belongs to this key", plan.Code, known.Token, KeyFile)
	}
	if s.Confirmed {
		return nil
	}
	if err := known.CheckAddress(plan.Address); err != nil {
		return err
	}
	return known.CheckClock(lastDay(plan))
}

// maybeOut counts the sheets whose paper of before nobody noted as printed, though it may be, and that say something else after.
func maybeOut(before, after ledger.Job) int {
	count := 0
	for _, sheet := range before.Sheets {
		if now, _ := after.Sheet(sheet.ID); !sheet.Gone && !sheet.WentOut() && now.Digest != sheet.Digest {
			count++
		}
	}
	return count
}

// stageShared prepares the files outside the jobs' folders. Without codes there are no addresses, and the site stays as it is.
func (s *staging) stageShared(programme notices.Programme) error {
	records := record.Merge(s.earlier, s.made)
	files := fontFiles()
	fonts := fontFaces("fonts/")
	overview, err1 := lists.Overview(records, fonts)
	contact, err2 := lists.Contact(records, fonts)
	if err := errors.Join(err1, err2); err != nil {
		return err
	}
	files[tree.SharedPrintPath("index.html")], files[tree.SharedPrintPath("contact.html")] = overview, contact
	files[tree.SharedPrintPath(lists.CalendarFile)] = lists.Calendar(programme, records)
	files[readMe] = []byte(readMeText)
	if s.kit.key != "" {
		pages, err := newPress(s.kit, programme).sharedPages()
		if err != nil {
			return err
		}
		maps.Copy(files, pages)
	}
	return s.folder.StageShared(files)
}

const (
	readMe     = "READ-ME.txt"
	readMeText = `The folder web is for the web: upload what is in it, and nothing else.
The folder print names homes and people. It is private.
`
)

// rememberAndSwap is the end of a make: the journal, the ledger, the swap. An error before anything is in the ledger takes the journal back.
func (s *staging) rememberAndSwap() (Make, error) {
	note, err := json.Marshal(s.lines)
	if err != nil {
		return Make{}, err
	}
	if s.done.Changed, err = s.folder.Commit(note); err != nil {
		return Make{}, err
	}
	if err := ledger.Append(s.Path, s.lines); err != nil && !s.isRemembered(s.lines) {
		return Make{}, errors.Join(err, s.folder.Discard())
	} else if err != nil {
		return s.done, fmt.Errorf("%w: one part of it is noted, and another is not: %w. The next doorleaf command of any kind finishes it", errUnfinished, err)
	}
	if err := s.folder.Swap(); err != nil {
		return s.done, fmt.Errorf("%w: what it says is noted, but %w", errUnfinished, err)
	}
	return s.done, nil
}
