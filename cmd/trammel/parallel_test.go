package main

import (
	"slices"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"
)

// TestInOrder lets later items finish first, each waiting for the one after it.
func TestInOrder(t *testing.T) {
	const n = 8
	var finished [n + 1]chan bool
	for i := range finished {
		finished[i] = make(chan bool)
	}
	close(finished[n])
	var got []int
	inOrder([]int{0, 1, 2, 3, 4, 5, 6, 7}, n, func(i int) int {
		<-finished[i+1]
		close(finished[i])
		return i * i
	}, func(square int) { got = append(got, square) })
	if want := []int{0, 1, 4, 9, 16, 25, 36, 49}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// TestInOrderLimit has as much work under way as was asked for, and no more.
func TestInOrderLimit(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var busy, most atomic.Int64
		inOrder(make([]int, 100), 3, func(int) int {
			most.Store(max(most.Load(), busy.Add(1)))
			time.Sleep(time.Second) // all who may work have begun by then
			busy.Add(-1)
			return 0
		}, func(int) {})
		if most.Load() != 3 {
			t.Errorf("%d at a time, want 3", most.Load())
		}
	})
}
