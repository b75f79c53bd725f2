/** Fields that name a point or its machine. */
export const NAMING_FIELDS: ReadonlySet<string> = new Set(["point_id", "asset_tag", "machine_name", "location_code"]);
