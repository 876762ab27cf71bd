/** Room of stage 2, basis: settings of this stage. May import: basis.relation. */
package fieldsalt.basis.setting;
