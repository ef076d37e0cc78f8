// Package tree is the output folder, and the only code that writes there. It knows jobs by code and token, and files by path; what is in them is no
// business of its own.
//
// # The model, in order
//
// [Open] locks a folder. [Folder.Stage] prepares one job ([Unit]) beside what is there, so that no more than one has to be in memory; [Folder.StageShared]
// does so with the files outside the jobs' folders, the index last. Up to [Folder.Commit] nothing has moved, and whatever goes wrong leaves the output as it
// was. From then on a journal says what belongs where, and [Folder.Swap] puts it there by renaming. Whoever is killed in between leaves the journal behind:
// [Folder.Left] finds it, and the caller, who alone knows what else belonged to that make, ends it by Swap or by [Folder.Discard].
//
// Nothing is deleted that doorleaf did not write. Each job's record.json lists the files of the job, the index at the root lists the others; a file that is
// not in these lists, or that somebody edited since, stops a make before anything changes when it lies where the output goes, and the error names every such
// file. Everything else in the folder is left alone. Unchanged files keep their bytes and their times.
//
// (A computer that loses power may still lose the last files of the output, as nothing waits for the disk; they can be made again.)
package tree
