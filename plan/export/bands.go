package export

import (
	"runtime"
	"sync"
	"sync/atomic"

	"dustbook/plan"
	"dustbook/plan/duct"
)

// Bands solves the bands of some results ahead, as many at once as there are
// processors; each is kept by the plan, so that asking for it again costs
// nothing. Which result a processor takes does not change what comes out.
func Bands(p *plan.Plan, results []*duct.Result) {
	var next atomic.Int64
	var group sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(results)) {
		group.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(results) {
					return
				}
				p.Air.Spread(results[i])
			}
		})
	}
	group.Wait()
}
