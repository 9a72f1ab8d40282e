// Package shell holds the plain cylinder of the tank.
package shell
