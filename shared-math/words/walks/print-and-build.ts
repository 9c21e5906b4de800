import type { Walk } from './walk.ts';

export const PRINT_AND_BUILD: Walk = {
  id: 'print-and-build',
  title: 'Print and build',
  about:
    'Paper for the bench, paper for the metal, paper for the customer, and the finished car held against it.',
  steps: [
    {
      words:
        'Open “Sheet”. The “Build sheet” has the views with every distance, links to cut, the box, the curves, the findings and the checks. Look through its pages, then “Make the build sheet”.',
      picture: {
        file: 'print-sheet',
        alt: 'The build sheet’s first page as it will be printed',
        of: 'sheet',
      },
    },
    {
      words:
        '“Templates at full size” are laid on the metal. Print them at 100 per cent, and hold a rule on the check rule of every page before you cut.',
      picture: { file: 'print-templates', alt: 'A template at full size with its check rules', of: 'sheet' },
    },
    {
      words:
        'The “Customer’s copy” is one page in plain words, with the cautions. It tells what was drawn, not what was built.',
    },
    {
      words:
        'When the car stands, read it: under “Measure”, “Finished car”, type what the gauge says over the travel. The board says whether car and drawing agree, and if not, what to look at.',
      picture: {
        file: 'print-finished',
        alt: 'The page of the finished car: gauge stations over the travel',
        of: 'column',
      },
    },
  ],
};
