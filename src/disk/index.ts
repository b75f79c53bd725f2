export { nodeInflating } from "./inflating.js";
