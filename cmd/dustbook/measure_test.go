//go:build unix

package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"

	"dustbook/content"
)

// ownShop is a folder with a shop of one's own.
func ownShop(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, shopFile), content.Small(), 0o644); err != nil {
		t.Fatal(err)
	}
	return dir
}

func init() {
	asProcess = func() {
		limited()
		standIn()
	}
}

// process runs the program as a process of its own.
func process(t *testing.T, variables []string, args ...string) (out string, status int) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self, args...)
	c.Env = append(os.Environ(), append(variables, "DUSTBOOK_TEST_RUN=1")...)
	said, err := c.CombinedOutput()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return string(said), c.ProcessState.ExitCode()
}

// limited sets the limits that a test asks of a process: how large a file may
// get, and as whom it runs.
func limited() {
	if text := os.Getenv("DUSTBOOK_TEST_ROOM"); text != "" {
		room, _ := strconv.ParseUint(text, 10, 64)
		if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: room, Max: room}); err != nil {
			panic(err)
		}
	}
	if text := os.Getenv("DUSTBOOK_TEST_USER"); text != "" {
		user, _ := strconv.Atoi(text)
		if err := syscall.Setuid(user); err != nil {
			panic(err)
		}
	}
}

// recordsIn lists what the folder of records holds; nil where there is none.
func recordsIn(t *testing.T, shop string) []string {
	t.Helper()
	entries, err := os.ReadDir(filepath.Join(shop, "records"))
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func TestTwentyMeasureAtOnce(t *testing.T) {
	shop := ownShop(t)
	var all sync.WaitGroup
	for i := range 20 {
		all.Go(func() {
			value := fmt.Sprintf("hood pressure at Table saw/cabinet = %d Pa", 500+i)
			if said, status := process(t, nil, "measure", shop, "--kind", "inspection", "--date", "2026-11-25", "--reading", value); status != 0 {
				t.Errorf("status %d: %s", status, said)
			}
		})
	}
	all.Wait()
	names := recordsIn(t, shop)
	var values []string
	for i := range 20 {
		name := fmt.Sprintf("2026-11-25-inspection-%d.toml", i+1)
		if !slices.Contains(names, name) {
			t.Errorf("no %s among %v", name, names)
			continue
		}
		data, err := os.ReadFile(filepath.Join(shop, "records", name))
		if err != nil {
			t.Fatal(err)
		}
		_, rest, _ := strings.Cut(string(data), `value = "`)
		value, _, _ := strings.Cut(rest, `"`)
		values = append(values, value)
	}
	slices.Sort(values)
	if values = slices.Compact(values); len(names) != 20 || len(values) != 20 {
		t.Errorf("%d files with %d values: %v", len(names), len(values), values)
	}
	if said, status := process(t, nil, "size", shop); status != 0 {
		t.Errorf("what was written is not read: %s", said)
	}
}

// A disk that is full leaves nothing behind and says so, whether or not the
// folder of records was there.
func TestMeasureOnAFullDisk(t *testing.T) {
	for _, there := range []bool{false, true} {
		for _, room := range []string{"0", "10"} {
			shop := ownShop(t)
			if there {
				if err := os.Mkdir(filepath.Join(shop, "records"), 0o777); err != nil {
					t.Fatal(err)
				}
			}
			said, status := process(t, []string{"DUSTBOOK_TEST_ROOM=" + room}, "measure", shop, "--kind", "service", "--date", "2026-11-25", "--note", "x")
			want := "dustbook: " + shop + ": cannot write records/2026-11-25-service-1.toml: file too large; nothing was written; see that the disk has room and the folder may be written to, then try again\n"
			if status != statusFailed || said != want {
				t.Errorf("room for %s bytes: status %d, %s", room, status, said)
			}
			if left := recordsIn(t, shop); len(left) > 0 {
				t.Errorf("left behind: %v", left)
			}
			if _, err := os.Stat(filepath.Join(shop, "records")); (err == nil) != there {
				t.Errorf("the folder of records: there before %v, now %v", there, err)
			}
			if said, status := process(t, nil, "measure", shop, "--kind", "service", "--date", "2026-11-25", "--note", "x"); status != statusDone {
				t.Errorf("with room again: status %d, %s", status, said)
			}
		}
	}
}

// A folder that may not be written to is said, and stays as it was.
func TestMeasureIntoAReadOnlyFolder(t *testing.T) {
	for _, there := range []bool{false, true} {
		shop := ownShop(t)
		folder, want := shop, "dustbook: cannot make the folder "+filepath.Join(shop, "records")+": permission denied; nothing was written\n"
		if there {
			folder = filepath.Join(shop, "records")
			want = "dustbook: " + shop + ": cannot write records/2026-11-25-service-1.toml: permission denied; nothing was written; see that the disk has room and the folder may be written to, then try again\n"
			if err := os.Mkdir(folder, 0o777); err != nil {
				t.Fatal(err)
			}
		}
		var as []string
		if os.Geteuid() == 0 { // who may write everywhere: run as nobody
			as = []string{"DUSTBOOK_TEST_USER=65534"}
			for _, up := range []string{filepath.Dir(shop), shop} {
				if err := os.Chmod(up, 0o755); err != nil {
					t.Fatal(err)
				}
			}
		}
		if err := os.Chmod(folder, 0o555); err != nil {
			t.Fatal(err)
		}
		said, status := process(t, as, "measure", shop, "--kind", "service", "--date", "2026-11-25", "--note", "x")
		if status != statusFailed || said != want {
			t.Errorf("the folder is there: %v: status %d, %s", there, status, said)
		}
		if err := os.Chmod(folder, 0o755); err != nil {
			t.Fatal(err)
		}
		if left := recordsIn(t, shop); len(left) > 0 {
			t.Errorf("left behind: %v", left)
		}
	}
}
