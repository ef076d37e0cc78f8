package site_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
)

// What leaves no room on paper is named: the sheet, the language, the part, and what to do.
func TestMisfitsAreNamed(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		change func(*notices.Job)
		want   []string
	}{
		"many days": {
			func(job *notices.Job) { *job, _ = jobWithKit(t, 60) },
			[]string{"sheet request-n12 in the language es: the table of days is ", " takes more than 4 sides of paper; give equal days equal hours and arrangements, or split the job in two"},
		},
		"many days in large print": {
			func(job *notices.Job) { *job, _ = jobWithKit(t, 60); job.Programme.LargePrint = true },
			[]string{"sheet request-n12 in the language es: the table of days is ", " takes more than 8 sides of paper"},
		},
		"a long house number": {
			func(job *notices.Job) {
				job.Address = strings.Repeat("1", 60) + " Alder Court, Larkfield"
				job.Households = nil
			},
			[]string{"sheet request-n12 in the language es: the headline: ", "find a shorter word"},
		},
		"a long name above": {
			func(job *notices.Job) { job.Programme.Name = strings.Repeat("Larkfield Volunteers ", 60) },
			[]string{"sheet letter-h1 in the language vi: the line with the names above the headline is ", "shorten the names"},
		},
		"a long name below": {
			func(job *notices.Job) { job.OnTheDay.Name = strings.Repeat("Rosa ", 200) },
			[]string{"sheet letter-h1 in the language vi: the foot is ", "shorten the names in it, or the base address"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			job := demoJob(t, "alder-14")
			c.change(&job)
			kit, err := site.NewKit(job.Programme, printedKey, os.ReadFile)
			if err != nil {
				t.Fatal(err)
			}
			plan := notices.Decide(job)
			plan.Sheets = lettersOf(plan)
			_, err = site.Build(plan, ledger.Job{}, kit)
			checkSays(t, err, c.want...)
		})
	}
}

func checkSays(t *testing.T, err error, parts ...string) {
	t.Helper()
	for _, part := range parts {
		if !strings.Contains(fmt.Sprint(err), part) {
			t.Errorf("got %v, want %q in it", err, part)
		}
	}
}

// No name stands in a block, so one is too long where its language has too many words.
func TestLongBlockIsNamed(t *testing.T) {
	job := demoJob(t, "alder-14")
	kit, err := site.NewKit(job.Programme, printedKey, os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	plan := notices.Decide(job)
	plan.Sheets = lettersOf(plan)
	blocks := plan.Sheets[0].Faces[0].Blocks
	why := &blocks[len(blocks)-2]
	for range 6 {
		why.Lines = append(why.Lines, why.Lines...)
	}
	_, err = site.Build(plan, ledger.Job{}, kit)
	checkSays(t, err, `sheet letter-h1 in the language vi: the block "Why" is too long for a side of paper`)
}

func lettersOf(plan notices.Plan) (letters []notices.Sheet) {
	for _, sheet := range plan.Sheets {
		if sheet.Kind != notices.WorkAreaSign {
			letters = append(letters, sheet)
		}
	}
	return letters
}
