export type {
  AcceptedOnPoint,
  AllowedBand,
  HeldBackPoint,
  HoldPoint,
  JobLine,
  JobPart,
  JobRecord,
  JobSection,
  JobValue,
  OutageTotal,
  PackBasis,
  PointJob,
  SupplyItem,
  WorkPack,
  WorkPacks,
} from "./pack.js";
export { RECORDED } from "./records.js";
export type { AcceptedFinding, HeldBack, HeldBackCause, PointOfRun, Release } from "./release.js";
export { Releasing, type ReleasingBook, releasedPoints } from "./releasing.js";
export { workPacks } from "./work-packs.js";
