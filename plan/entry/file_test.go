package entry

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// tell reads a file and returns its problems as text.
func tell(t *testing.T, path string) string {
	t.Helper()
	data, err := ReadFile(path, "shop.toml")
	var problems Problems
	if data != nil || !errors.As(err, &problems) {
		t.Fatalf("%d bytes, %v", len(data), err)
	}
	return problems.Error()
}

func TestReadFileRefusesWhatIsNoPlanFile(t *testing.T) {
	folder := t.TempDir()
	large := filepath.Join(folder, "large")
	if err := os.WriteFile(large, make([]byte, MaxBytes+1), 0o600); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		filepath.Join(folder, "none"): "shop.toml: read no such file; expected a TOML file; do: check the name and the folder",
		folder:                        "shop.toml: read a folder; expected a TOML file; do: name the file in it, such as shop.toml",
		large:                         "shop.toml: read 1048577 bytes; expected at most 1 MiB (1048576 bytes) in a file; do: check that this is the file you mean, or take out what does not belong in it",
	} {
		if got := tell(t, path); got != want {
			t.Errorf("got  %s\nwant %s", got, want)
		}
	}
}

func TestReadFileRefusesDevices(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no device file to be had")
	}
	want := "shop.toml: read a device or pipe; expected a TOML file; do: save the text to a file and name that"
	if got := tell(t, os.DevNull); got != want {
		t.Errorf("got %s", got)
	}
}

func TestReadFileReadsUpToTheBound(t *testing.T) {
	for _, size := range []int{0, 1, MaxBytes} {
		path := filepath.Join(t.TempDir(), "f")
		if err := os.WriteFile(path, []byte(strings.Repeat("#", size)), 0o600); err != nil {
			t.Fatal(err)
		}
		data, err := ReadFile(path, "f")
		if err != nil || len(data) != size {
			t.Errorf("%d bytes: %d, %v", size, len(data), err)
		}
	}
}

// TestOtherFailuresAreTheDisks tells what the owner can change from what the
// disk did, and shows no path but the one given.
func TestOtherFailuresAreTheDisks(t *testing.T) {
	err := unreadable("shop.toml", &os.PathError{Op: "read", Path: "/far/away/shop.toml", Err: errors.New("the disk is gone")})
	var problems Problems
	if errors.As(err, &problems) || err.Error() != "shop.toml: the disk is gone" {
		t.Errorf("%v", err)
	}
	err = unreadable("shop.toml", &os.PathError{Op: "open", Path: "/far/away", Err: os.ErrPermission})
	if !errors.As(err, &problems) || strings.Contains(err.Error(), "/far") {
		t.Errorf("%v", err)
	}
}
