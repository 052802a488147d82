package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"trammel/lang"
)

// TestMain makes two commands for the scripts: trammel, and one whose compiler
// breaks down over every source that has the word "breakdown" in it.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"trammel": main,
		"trammel-broken": func() {
			e := &env{stdin: os.Stdin, stdout: os.Stdout, stderr: os.Stderr, compile: breakdown}
			os.Exit(run(e, os.Args[1:]))
		},
		"trammel-halfway": halfway,
	})
}

// halfway is stopped by a signal while it writes a file.
func halfway() {
	tidy()
	if _, err := temporaries.create("."); err != nil {
		panic(err)
	}
	self, err := os.FindProcess(os.Getpid())
	if err == nil {
		err = self.Signal(syscall.SIGTERM)
	}
	if err != nil {
		panic(err)
	}
	select {}
}

func breakdown(path string, text []byte) *lang.Result {
	if strings.Contains(string(text), "breakdown") {
		return []*lang.Result{}[len(text)]
	}
	return lang.Compile(path, text)
}

// TestScripts runs whole commands; each file of testdata/script tells one story.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: filepath.Join("testdata", "script"),
		Setup: func(env *testscript.Env) error {
			env.Setenv("GORACE", "atexit_sleep_ms=0") // the race detector dawdles by a second
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits":     exits,
			"age":       age,
			"untouched": untouched,
			"hostile":   hostile,
			"big":       large,
			"zeros":     zeros,
			"deep":      deep,
		},
		Condition: func(cond string) (bool, error) {
			if cond == "root" { // who may read and write everything
				return os.Geteuid() == 0, nil
			}
			return false, errors.New("unknown condition " + cond)
		},
	})
}

// exits CODE PROGRAM ARGS… runs a program that must end with that code.
func exits(ts *testscript.TestScript, _ bool, args []string) {
	err := ts.Exec(args[1], args[2:]...)
	code := 0
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		code = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if want, err := strconv.Atoi(args[0]); err != nil || code != want {
		ts.Fatalf("exit code %d, want %s", code, args[0])
	}
}

var longAgo = time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC)

// age FILE… makes files old.
func age(ts *testscript.TestScript, _ bool, args []string) {
	for _, name := range args {
		ts.Check(os.Chtimes(ts.MkAbs(name), longAgo, longAgo))
	}
}

// untouched FILE… holds if files are as old as age made them.
func untouched(ts *testscript.TestScript, not bool, args []string) {
	for _, name := range args {
		info, err := os.Stat(ts.MkAbs(name))
		ts.Check(err)
		if info.ModTime().Equal(longAgo) == not {
			ts.Fatalf("%s was last written at %v", name, info.ModTime())
		}
	}
}

var hostileNames = []string{"esc\x1b[31mape.trm", "line\nend.trm", "right\u202eleft.trm", "no\xffutf8.trm"}

// hostile FILE copies a file to names that could upset a terminal, in the
// folder hostile.
func hostile(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(os.MkdirAll(ts.MkAbs("hostile"), 0o777))
	for _, name := range hostileNames {
		ts.Check(os.WriteFile(filepath.Join(ts.MkAbs("hostile"), name), []byte(ts.ReadFile(args[0])), 0o666))
	}
}

// big FILE BYTES makes a file of spaces.
func large(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), slices.Repeat([]byte{' '}, n), 0o666))
}

// zeros FILE makes a file of a zero byte.
func zeros(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte{0}, 0o666))
}

// deep FILE copies a file into a hundred folders one in the other.
func deep(ts *testscript.TestScript, _ bool, args []string) {
	dir := filepath.Join(ts.MkAbs("deep"), strings.Repeat("d"+string(filepath.Separator), 100))
	ts.Check(os.MkdirAll(dir, 0o777))
	ts.Check(os.WriteFile(filepath.Join(dir, "x.trm"), []byte(ts.ReadFile(args[0])), 0o666))
}
