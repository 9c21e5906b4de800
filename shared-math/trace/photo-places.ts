/** A place in a plane, right and down, in the plane's own unit. Each of those below is in one plane alone. */
export type Planar = readonly [right: number, down: number];

/** A place on a photo as it was taken, px. */
export type PhotoSpot = Planar & { readonly unit?: 'px' };

/** The same without the lens's bending, px. */
export type UnbentSpot = Planar & { readonly unit?: 'px unbent' };

/** A place in the plane that was straightened, from its first corner: mm; of a photo that is not straightened, px again. */
export type FlatPlace = Planar & { readonly unit?: 'of the flat plane' };

/** A place in the picture as it is shown straight on, px of that picture. */
export type ShownSpot = Planar & { readonly unit?: 'px shown' };
