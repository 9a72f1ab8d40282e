// Package heads holds the head shapes of a tank.
package heads
