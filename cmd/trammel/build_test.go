package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trammel/lang"
)

// perpendicular is a source of the usual size.
const perpendicular = `figure "A perpendicular from a point of a line"

given line m through A (0, 0) and B (9, 0)
given P on m, 4 from A

arc c centre P radius any cuts m at L and R
arc d centre L radius any over PL
arc e centre R radius d
d meets e at X above m
line n through P and X
join LX, RX
dashed LX, RX

mark right RPX
mark PL = PR
mark LX = RX
claim n perpendicular to m
claim triangle PLX congruent to PRX
`

// folderOf makes a folder of figures, each a little different.
func folderOf(b *testing.B, figures int) string {
	dir := b.TempDir()
	for i := range figures {
		text := strings.Replace(perpendicular, "4 from A", fmt.Sprintf("%d.%02d from A", 3+i/100%3, i%100), 1)
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("f%d.trm", i)), []byte(text), 0o666); err != nil {
			b.Fatal(err)
		}
	}
	return dir
}

func benchmarkBuild(b *testing.B, figures int) {
	dir := folderOf(b, figures)
	for b.Loop() {
		var said strings.Builder
		e := &env{stderr: &said, compile: lang.Compile}
		if status := run(e, []string{"build", dir, "-o", filepath.Join(dir, "out") + "/"}); status != exitGood {
			b.Fatal(said.String())
		}
	}
	b.ReportMetric(1000*b.Elapsed().Seconds()/float64(b.N*figures), "ms/figure")
}

func BenchmarkBuildOne(b *testing.B)      { benchmarkBuild(b, 1) }
func BenchmarkBuildThousand(b *testing.B) { benchmarkBuild(b, 1000) }
