/** How a host ends that has said in one line why it cannot open: another host would only say the same. */
export const REFUSED_EXIT = 78;
