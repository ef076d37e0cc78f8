// Package ledger remembers what paper cannot take back: the addresses on it, what each sheet said, and what became of it.
//
// # The model, in order
//
// A line is one event of one job: sheets were made, printed, posted, handed over or signed for, a home was phoned or refused, a sheet was removed, a mark was
// struck. Lines are only ever added. Each laptop writes a file of its own, ledger/<code>/<laptop>.jsonl, and each line is sealed to the one before it in that
// file; so a shared folder merges by keeping all files, and a cut or an edit is found and named.
//
// A line has the number n, one more than the highest that its laptop had seen anywhere, which is the order of all lines (those with equal numbers go by laptop);
// and of each other laptop the highest number that it had seen, so that a lost line is noticed. A [Job] is what all lines come to, in whatever order the files
// are read: [Read] folds them.
//
// What a sheet is, is the digest of its facts. Its revision is a number for people: each make that finds other facts gives it the next one. Two laptops that
// did so at the same time made two papers with one number; these get a tag, 2-K7 and 2-Q3, and the next replaces both. A mark ([Mark]) names the digest of the
// paper that it is about. It counts until a line ends it (the sign came down, or another went up in its place) or strikes it (it was a slip). Either takes only
// marks that it names, so it never takes one that its laptop had not seen.
//
// Changes return another [Job], with lines that are not on the disk yet; [Append] writes them, and reads back first what it is about to write.
package ledger
