package unit_test

import (
	"fmt"

	"dustbook/plan/unit"
)

func ExampleRead() {
	size, _ := unit.Read[unit.Length](`12' 6"`)
	flow, _ := unit.Read[unit.Flow]("1,200 cfm (2040 m3/h)")
	fmt.Println(unit.Short(float64(size)), "m")
	fmt.Println(unit.Short(float64(flow)), "m3/s")
	// Output:
	// 3.81 m
	// 0.566337 m3/s
}

func ExampleRead_refused() {
	_, err := unit.Read[unit.Pressure]("4 in")
	e := err.(*unit.Error)
	fmt.Println(e.Read)
	fmt.Println(e.Expected)
	fmt.Println(e.Do)
	// Output:
	// "4 in"
	// a pressure with its unit, such as "2.5 inwg" or "600 Pa", not a length
	// Write "4 inwg".
}

func ExampleReadAt() {
	leak, at, err := unit.ReadAt[unit.Flow, unit.Pressure]("15 cfm at 8 inwg")
	fmt.Println(unit.Air.Print(unit.Metric, leak), unit.Press.Print(unit.Metric, at), err)
	// Output: 25 m³/h 1990 Pa <nil>
}

func ExampleScale_Print() {
	delivered := unit.Must[unit.Flow]("1037.2 cfm")
	fmt.Println(unit.Air.Print(unit.US, delivered))
	fmt.Println(unit.Air.Print(unit.Metric, delivered))
	// Output:
	// 1040 cfm
	// 1760 m³/h
}

func ExampleScale_Pair() {
	value, limit := unit.Must[unit.Flow]("349.8 cfm"), unit.Must[unit.Flow]("350 cfm")
	fmt.Println(unit.Air.Pair(unit.US, value, limit))
	// Output: 349.8 350.0
}

func ExampleSignificant() {
	fmt.Println(unit.Significant(1037.2, 3), unit.Significant(0.3054, 3), unit.Significant(12.04, 3))
	// Output: 1040 0.305 12.0
}
