/** The version of the layout document that this program writes, and the newest that it reads. */
export const LAYOUT_VERSION = 4;
