package main

import "sync/atomic"

// inOrder works on the items, at most n at a time, and hands the results over
// one by one in the order of the items.
func inOrder[T, R any](items []T, n int, work func(T) R, done func(R)) {
	results := make([]chan R, len(items))
	for i := range results {
		results[i] = make(chan R, 1)
	}
	var next atomic.Int64
	for range min(n, len(items)) {
		go func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(items) {
					return
				}
				results[i] <- work(items[i])
			}
		}()
	}
	for _, r := range results {
		done(<-r)
	}
}
