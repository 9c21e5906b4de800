// Files: layouts and whole cars in and out, the demonstrations, names that every system takes, writing whole or not at all.
export { CAR_FILE_EXTENSION, type CarFile, carFile, photosNamed } from './car-file.ts';
export {
  type DemonstrationLayout,
  type DemonstrationShop,
  demonstrationPhotos,
  readDemonstrationShelf,
  readDemonstrations,
} from './demonstrations.ts';
export { type CheckedDrawing, checkKept } from './drawing-check.ts';
export { handbookPicture } from './handbook-pictures.ts';
export { FILE_TEXT_MAX, type ImportedFile, readImport } from './import-file.ts';
export { MEASURING_TEXT_MAX, type MeasuredLine, measuringCsv, readMeasuringCsv } from './measuring-csv.ts';
export { type CheckedPhoto, checkPhoto, PHOTO_BYTES_MAX } from './photo-check.ts';
export { type PointTable, readPointsCsv } from './points-csv.ts';
export { programFolder, programVersion, projectsFolder, rendererFolder } from './program-folder.ts';
export { safeFileName } from './safe-name.ts';
export { readShelfCsv, SHELF_PARTS_MAX, SHELF_TEXT_MAX, shelfCsv } from './shelf-csv.ts';
export { writeAside } from './write-aside.ts';
export { writeReason } from './write-reason.ts';
