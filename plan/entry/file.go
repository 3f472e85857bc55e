package entry

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// MaxBytes is the size above which a file is refused unread.
const MaxBytes = 1 << 20

// ReadFile returns the bytes of a file of at most MaxBytes. A folder, a device
// and a file that is too large are refused without being read. The name shown
// is the one that messages use. The error is of type Problems when the file or
// its name has to be changed; any other error is the disk's.
func ReadFile(path, shown string) ([]byte, error) {
	info, err := os.Stat(path) // before opening: opening a pipe would wait for a writer
	if err != nil {
		return nil, unreadable(shown, err)
	}
	if err := refuseKind(shown, info); err != nil {
		return nil, err
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, unreadable(shown, err)
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, MaxBytes+1))
	if err != nil {
		return nil, unreadable(shown, err)
	}
	if len(data) > MaxBytes {
		return nil, Problems{tooLarge(shown, "more than 1 MiB")}
	}
	return data, nil
}

// refuseKind refuses what is no ordinary file of a fair size.
func refuseKind(shown string, info fs.FileInfo) error {
	switch mode := info.Mode(); {
	case mode.IsDir():
		return Problems{{File: shown, Read: "a folder", Expected: "a TOML file", Do: "name the file in it, such as shop.toml"}}
	case !mode.IsRegular():
		return Problems{{File: shown, Read: "a device or pipe", Expected: "a TOML file", Do: "save the text to a file and name that"}}
	case info.Size() > MaxBytes:
		return Problems{tooLarge(shown, fmt.Sprintf("%d bytes", info.Size()))}
	}
	return nil
}

// tooLarge is the problem of a file above MaxBytes.
func tooLarge(shown, read string) Problem {
	return Problem{File: shown, Read: read, Expected: "at most 1 MiB (1048576 bytes) in a file",
		Do: "check that this is the file you mean, or take out what does not belong in it"}
}

// unreadable says why a file could not be opened or read, without its full path.
func unreadable(shown string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return Problems{{File: shown, Read: "no such file", Expected: "a TOML file", Do: "check the name and the folder"}}
	case errors.Is(err, fs.ErrPermission):
		return Problems{{File: shown, Read: "a file that may not be read", Expected: "a file you may read", Do: "change its permissions"}}
	}
	var inPath *fs.PathError
	if errors.As(err, &inPath) {
		err = inPath.Err
	}
	return fmt.Errorf("%s: %w", shown, err)
}
