package record

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"testing/fstest"
)

const service = "kind = \"service\"\ndate = 2026-11-24\n"

// filesOf makes a folder of files.
func filesOf(files map[string]string) fstest.MapFS {
	folder := fstest.MapFS{}
	for name, text := range files {
		folder[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return folder
}

func namesOf(records []*Record) string {
	var names []string
	for _, r := range records {
		names = append(names, r.File)
	}
	return strings.Join(names, " ")
}

// Records come in the order of their names, the tenth after the second; what
// is not a record's file is left alone.
func TestReadFolder(t *testing.T) {
	files := map[string]string{
		"2026-11-24-service-10.toml": service, "2026-11-24-service-2.toml": service, "2026-11-24-service-1.toml": service,
		"2026-11-24-change-1.toml": strings.Replace(service, "service", "change", 1), "2025-01-02-letter-1.toml": "kind = \"letter\"\ndate = 2025-01-02\n",
		"README.md": "x", "notes.txt": "x", ".tmp-record-X": "kind =", "._2026-11-24-service-1.toml": "\x00", "2026-11-24-service-1.toml~": "x", "old/2020-01-01-service-1.toml": "x",
	}
	records, problems := ReadFolder(filesOf(files))
	const want = "2025-01-02-letter-1.toml 2026-11-24-change-1.toml 2026-11-24-service-1.toml 2026-11-24-service-2.toml 2026-11-24-service-10.toml"
	if got := namesOf(records); got != want || len(problems) > 0 {
		t.Errorf("%s\n%v", got, problems)
	}
}

func TestReadFolderMissing(t *testing.T) {
	records, problems := ReadFolder(os.DirFS(filepath.Join(t.TempDir(), Folder)))
	if records != nil || problems != nil {
		t.Errorf("%v, %v", records, problems)
	}
	if records, problems := ReadFolder(os.DirFS(t.TempDir())); records != nil || problems != nil {
		t.Errorf("empty: %v, %v", records, problems)
	}
}

const nameExpected = "expected date, kind and number of the record, such as 2026-11-24-commissioning-1.toml; do: "

func TestReadFolderWrong(t *testing.T) {
	for _, c := range []struct {
		name     string
		files    map[string]string
		records  string
		problems []string
	}{
		{"another date", map[string]string{"2026-11-25-service-1.toml": service}, "", []string{
			`2026-11-25-service-1.toml:2:8: read date = 2026-11-24; expected 2026-11-25, the date in the file's name; do: rename the file 2026-11-24-service-1.toml, or write date = 2026-11-25`}},
		{"another kind and date", map[string]string{"2026-11-25-change-3.toml": service}, "", []string{
			`2026-11-25-change-3.toml:1:8: read kind = "service"; expected "change", the kind in the file's name; do: rename the file 2026-11-24-service-3.toml, or write kind = "change"`,
			`2026-11-25-change-3.toml:2:8: read date = 2026-11-24; expected 2026-11-25, the date in the file's name; do: rename the file 2026-11-24-service-3.toml, or write date = 2026-11-25`}},
		{"names of another form", map[string]string{"service.toml": service, "2026-11-24-service.toml": service, "2026-11-24-service-4.toml": service, "zero-0.toml": "kind ="}, "2026-11-24-service-4.toml", []string{
			`2026-11-24-service.toml: read the file name "2026-11-24-service.toml"; ` + nameExpected + `rename it 2026-11-24-service-5.toml, or move it out of the folder`,
			`service.toml: read the file name "service.toml"; ` + nameExpected + `rename it 2026-11-24-service-6.toml, or move it out of the folder`,
			`zero-0.toml: read the file name "zero-0.toml"; ` + nameExpected + `rename it in that way, or move it out of the folder`,
			`zero-0.toml:1:7: read nothing after kind =; expected a value; do: write a value after the =, or take the line away`}},
		{"a folder", map[string]string{"2026-11-24-service-1.toml/x": service}, "", []string{
			`2026-11-24-service-1.toml: read a folder; expected the file of a record; do: move it out of the folder`}},
		{"one wrong beside one right", map[string]string{"2026-11-24-service-1.toml": service, "2026-11-24-service-2.toml": service + "not = 1\n"}, "2026-11-24-service-1.toml", []string{
			`2026-11-24-service-2.toml:3:1: read the key "not"; expected a field of a record; do: write "note"`}},
		{"too large", map[string]string{"2026-11-24-service-1.toml": strings.Repeat("#", 1<<20+1)}, "", []string{
			`2026-11-24-service-1.toml: read 1048577 bytes; expected at most 1 MiB (1048576 bytes) in a file; do: check that this is the file you mean, or take out what does not belong in it`}},
	} {
		records, problems := ReadFolder(filesOf(c.files))
		compareLines(t, c.name, problems, "records/", c.problems)
		if got := namesOf(records); got != c.records {
			t.Errorf("%s: read %s", c.name, got)
		}
	}
}

// Which file names are a record's.
func TestReadName(t *testing.T) {
	for name, fits := range map[string]bool{
		"2026-11-24-commissioning-1.toml": true, "2028-02-29-letter-9999.toml": true,
		"2026-02-29-letter-1.toml": false, "2026-11-24-party-1.toml": false, "2026-11-24-service-0.toml": false, "2026-11-24-service-01.toml": false,
		"2026-11-24-service-10000.toml": false, "2026-11-24-service-1.TOML": false, "2026-1-2-service-1.toml": false, "2026-11-24-Service-1.toml": false,
		" 2026-11-24-service-1.toml": false, "2026-11-24-service-1.toml\n": false, "2026-11-24-service-.toml": false,
	} {
		if _, got := readName(name); got != fits {
			t.Errorf("%q: %v", name, got)
		}
	}
}

// A folder that holds too much is refused before it is read.
func TestReadFolderBounds(t *testing.T) {
	many := fstest.MapFS{}
	for i := range mostFiles + 1 {
		many[fmt.Sprintf("%d.toml", i)] = &fstest.MapFile{}
	}
	records, problems := ReadFolder(many)
	if records != nil {
		t.Error("read all the same")
	}
	compareLines(t, "many", problems, "records: ", []string{"read 10001 files; expected at most 10000 records; do: move the oldest records to another folder"})

	large := fstest.MapFS{}
	text := []byte(service + strings.Repeat("#"+strings.Repeat("x", 100)+"\n", 10000))
	for i := range mostBytes/len(text) + 2 {
		large[fmt.Sprintf("2026-11-24-service-%d.toml", i+1)] = &fstest.MapFile{Data: text}
	}
	records, problems = ReadFolder(large)
	if records != nil {
		t.Error("read all the same")
	}
	compareLines(t, "large", problems, "records: ", []string{"read more than 64 MiB; expected records of at most 64 MiB together; do: move the oldest records to another folder"})

	bad := fstest.MapFS{}
	for i := range mostFolderProblems * 2 {
		bad[fmt.Sprintf("2026-11-24-service-%d.toml", i+1)] = &fstest.MapFile{Data: []byte("kind = ")}
	}
	if _, problems = ReadFolder(bad); len(problems) != mostFolderProblems {
		t.Errorf("%d problems", len(problems))
	}
}

// lost is a folder whose files cannot be read.
type lost struct {
	fstest.MapFS
	err error
}

func (l lost) Open(name string) (fs.File, error) {
	if name == "." {
		return l.MapFS.Open(name)
	}
	return nil, &fs.PathError{Op: "open", Path: "/home/me/records/" + name, Err: l.err}
}

func (l lost) Stat(name string) (fs.FileInfo, error) { return l.MapFS.Stat(name) }

func TestReadFolderUnreadable(t *testing.T) {
	files := filesOf(map[string]string{"2026-11-24-service-1.toml": service})
	for _, c := range []struct {
		err  error
		want string
	}{
		{fs.ErrPermission, "read a file that may not be read; expected a file that can be read; do: change its permissions"},
		{fs.ErrNotExist, "read no such file; expected a file that can be read; do: take the link away that leads to it, or try again"},
		{syscall.EIO, "read input/output error; expected a file that can be read; do: try again, or mend the disk"},
	} {
		_, problems := ReadFolder(lost{files, c.err})
		compareLines(t, c.err.Error(), problems, "records/2026-11-24-service-1.toml: ", []string{c.want})
	}
}

// A device named like a record is not opened, and a link that leads out of
// the folder is not followed.
func TestReadFolderOddFiles(t *testing.T) {
	dir := t.TempDir()
	const name = "2026-11-24-service-1.toml"
	if err := os.Symlink(os.DevNull, filepath.Join(dir, name)); err != nil {
		t.Skip("no links here")
	}
	_, problems := ReadFolder(os.DirFS(dir))
	compareLines(t, "a device", problems, "records/"+name, []string{": read a device or pipe; expected the file of a record; do: move it out of the folder"})
	_, problems = ReadFolder(openRoot(t, dir).FS())
	if len(problems) != 1 || problems[0].File != "records/"+name || strings.Contains(problems[0].Error(), dir) {
		t.Errorf("%v", problems)
	}
}
