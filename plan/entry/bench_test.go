package entry

import "testing"

// BenchmarkRead reads a file of sixty machines, and the costly texts.
func BenchmarkRead(b *testing.B) {
	texts := map[string]string{"sixty machines": repeated(`
[[machine]]
name = "Table saw %d"
kind = "table saw"
at = [12, 9]
motor = { power = "3 hp", volts = "230 V", phase = 1 }
[[machine.port]]
name = "cabinet"
flow = "350 cfm"
`, 60)}
	for name, text := range costly {
		texts[name] = text
	}
	for name, text := range texts {
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				Read("f", []byte(text))
			}
		})
	}
}
