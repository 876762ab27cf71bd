/**
 * Commands, options, exit codes, progress: the only package that prints, exits or reads the clock.
 */
package fieldsalt.cli;
