/**
 * Leaf: published tables and coefficients as resources, with their citations and confidence, and
 * the published relations that need no settings, one small class each. No decisions. May import:
 * quantity, finding.
 */
package fieldsalt.facts;
