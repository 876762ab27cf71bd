/**
 * Turns a JobDocument into the stages' settings and runs the stages in order. May import:
 * everything but cli.
 */
package fieldsalt.pipeline;
