/** What lies open around the board. None of it is modal: the board stays in reach. */
export type DrawerPage = 'cars' | 'history' | 'bin';

export class Shell {
  drawer: DrawerPage | null = $state(null);
  keysShown = $state(false);
  /** Which page of the right column shows. */
  column: 'points' | 'car' = $state('points');

  toggleDrawer(page: DrawerPage = 'cars'): void {
    this.drawer = this.drawer === page ? null : page;
  }
}
