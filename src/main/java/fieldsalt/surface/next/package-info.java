/**
 * Room of stage 3, surface: what to measure next. Takes: the likeliest model. Gives: proposals with
 * their gains. May import: surface.choice and what that may.
 */
package fieldsalt.surface.next;
