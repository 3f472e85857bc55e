//go:build race

package sequence

// raced says that runs are watched for races, and take many times as long.
const raced = true
