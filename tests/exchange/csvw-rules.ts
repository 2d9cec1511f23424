/**
 * The rules for the description of one table, as published: "Metadata Vocabulary for Tabular Data" (W3C Recommendation,
 * 17 December 2015, https://www.w3.org/TR/2015/REC-tabular-metadata-20151217/), below "V" with the section, and "Model for
 * Tabular Data and Metadata on the Web" (same date, https://www.w3.org/TR/2015/REC-tabular-data-model-20151217/), below "M".
 * Both were read in full where cited. What they call a warning is an offence here too. Left out, because a list of this
 * program never has it: table groups (V 5.3), transformations (V 5.10), facets of derived datatypes (V 5.11.2), references
 * to documents elsewhere (V 5.1.5).
 */

export type Json = Readonly<Record<string, unknown>>;

export const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
export const isText = (value: unknown): value is string => typeof value === 'string';
const isLogical = (value: unknown): boolean => typeof value === 'boolean';
const isCount = (value: unknown): boolean => Number.isInteger(value) && Number(value) >= 0;
const isOneOf =
  (...allowed: readonly unknown[]) =>
  (value: unknown): boolean =>
    allowed.includes(value);

/** RFC 5646 section 2.1; primary subtags of four letters and more are not registered (2.2.1). */
const isLanguage = (value: unknown): boolean =>
  isText(value) &&
  /^[a-z]{2,3}(?:-[a-z]{3}){0,3}(?:-[a-z]{4})?(?:-(?:[a-z]{2}|\d{3}))?(?:-(?:[a-z\d]{5,8}|\d[a-z\d]{3}))*(?:-x(?:-[a-z\d]{1,8})+)?$|^und$/i.test(
    value,
  );

/** V 5.11.1: the types of XML Schema 1.1 part 2 derived from anyAtomicType, and seven more names. */
const DATATYPES =
  `anyAtomicType anyURI base64Binary boolean date dateTime dateTimeStamp decimal integer long int short byte nonNegativeInteger
  positiveInteger unsignedLong unsignedInt unsignedShort unsignedByte nonPositiveInteger negativeInteger double duration
  dayTimeDuration yearMonthDuration float gDay gMonth gMonthDay gYear gYearMonth hexBinary QName string normalizedString token
  language Name NMTOKEN time number binary datetime any xml html json`.split(/\s+/);

/** V 5.8.1: the prefixes of the namespace document http://www.w3.org/ns/csvw; no others may be declared. */
const PREFIXES =
  `cc csvw ctag dc dc11 dcat dcterms dctypes foaf gr grddl ical ma oa og org owl prov qb rdf rdfa rdfs rev rif rr schema sd sioc
  skos skosxl v vcard void wdr wrds xhv xsd`.split(/\s+/);

const isAbsolute = (text: string): boolean => /^[a-z][a-z\d+.-]*:\/\/\S+$/i.test(text);
const isPrefixed = (text: string): boolean => PREFIXES.includes(/^(\w+):[^\s/]/.exec(text)?.[1] ?? '');
/** V 5.8: the name of a property from another vocabulary. */
const isCommon = (key: string): boolean => isPrefixed(key) || isAbsolute(key);

/** V 5.1.2: a text that is a URL reference (RFC 3986 appendix A), and no blank node (V A). */
const isLink = (value: unknown): boolean =>
  isText(value) && !value.startsWith('_:') && /^(?:[\w\-.~:/?#[\]@!$&'()*+,;=]|%[\da-f]{2})+$/i.test(value);

/** V 5.1.6. */
function isNaturalLanguage(value: unknown): boolean {
  const isTexts = (each: unknown): boolean => isText(each) || (Array.isArray(each) && each.every(isText));
  if (!isObject(value)) return isTexts(value);
  return Object.keys(value).every(isLanguage) && Object.values(value).every(isTexts);
}

/** V 5.6, name: RFC 6570 section 2.3 varname, and no "_" at its beginning. */
const isName = (value: unknown): boolean =>
  isText(value) &&
  /^(?:[a-z\d_]|%[\da-f]{2})(?:\.?(?:[a-z\d_]|%[\da-f]{2}))*$/i.test(value) &&
  !value.startsWith('_');

/** V 5.7, datatype; V 5.11.2, base. */
const isDatatype = (value: unknown): boolean =>
  isObject(value) ? isOneOf(undefined, ...DATATYPES)(value['base']) : isOneOf(...DATATYPES)(value);

/** The labels of the Encoding standard, as this computer knows them. */
function isEncoding(value: unknown): boolean {
  try {
    return isText(value) && new TextDecoder(value).encoding !== '';
  } catch {
    return false;
  }
}

type Properties = Readonly<Record<string, (value: unknown) => boolean>>;

/** V 5.7. */
const INHERITED: Properties = {
  aboutUrl: isText,
  datatype: isDatatype,
  default: isText,
  lang: isLanguage,
  null: (value) => isText(value) || (Array.isArray(value) && value.every(isText)),
  ordered: isLogical,
  propertyUrl: isText,
  required: isLogical,
  separator: (value) => isText(value) || value === null,
  textDirection: isOneOf('ltr', 'rtl', 'auto', 'inherit'),
  valueUrl: isText,
};

/** V 5.4; @context V 5.2. */
const TABLE: Properties = {
  ...INHERITED,
  '@context': () => true,
  url: isLink,
  dialect: isObject,
  notes: (value) => Array.isArray(value) && value.every(isObject),
  suppressOutput: isLogical,
  tableDirection: isOneOf('rtl', 'ltr', 'auto'),
  tableSchema: isObject,
  '@id': isLink,
  '@type': isOneOf('Table'),
};

/** V 5.5. */
const SCHEMA: Properties = {
  ...INHERITED,
  columns: (value) => Array.isArray(value) && value.every(isObject),
  foreignKeys: (value) => Array.isArray(value) && value.every(isObject),
  primaryKey: () => true,
  rowTitles: () => true,
  '@id': isLink,
  '@type': isOneOf('Schema'),
};

/** V 5.6. */
const COLUMN: Properties = {
  ...INHERITED,
  name: isName,
  suppressOutput: isLogical,
  titles: isNaturalLanguage,
  virtual: isLogical,
  '@id': isLink,
  '@type': isOneOf('Column'),
};

/** V 5.9; a delimiter of more than one character is refused by test 060 of the published suite. */
const DIALECT: Properties = {
  commentPrefix: isText,
  delimiter: (value) => isText(value) && value.length === 1,
  doubleQuote: isLogical,
  encoding: isEncoding,
  header: isLogical,
  headerRowCount: isCount,
  lineTerminators: (value) => isText(value) || (Array.isArray(value) && value.every(isText)),
  quoteChar: (value) => value === null || (isText(value) && value.length === 1),
  skipBlankRows: isLogical,
  skipColumns: isCount,
  skipInitialSpace: isLogical,
  skipRows: isCount,
  trim: isOneOf(true, false, 'true', 'false', 'start', 'end'),
  '@id': isLink,
  '@type': isOneOf('Dialect'),
};

/** V 5.8.2 and A: what an object inside the value of a common property may hold. */
function commonOffences(key: string, value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap((each) => commonOffences(key, each));
  if (!isObject(value)) return [];
  const found: string[] = [];
  const say = (words: string): number => found.push(`V 5.8.2 ${key}: ${words}`);
  const isType = (type: unknown): boolean =>
    isText(type) &&
    !type.startsWith('_:') &&
    (isPrefixed(type) ||
      isAbsolute(type) ||
      ('@value' in value
        ? DATATYPES
        : ['TableGroup', 'Table', 'Schema', 'Column', 'Dialect', 'Template', 'Datatype']
      ).includes(type));
  if ('@value' in value) {
    const others = Object.keys(value).filter((each) => each !== '@value');
    if (others.length > 1 || others.some((each) => each !== '@type' && each !== '@language'))
      say('something beside @value');
    if (!['string', 'number', 'boolean'].includes(typeof value['@value'])) say('@value is no plain value');
  } else if ('@language' in value) say('@language without @value');
  const language = value['@language'];
  if (language !== undefined && language !== null && !isLanguage(language)) say('@language');
  if ('@type' in value && ![value['@type']].flat().every(isType)) say('@type');
  if ('@id' in value && !isLink(value['@id'])) say('@id');
  for (const [inner, each] of Object.entries(value)) {
    if (['@value', '@language', '@type', '@id'].includes(inner)) continue;
    if (inner.startsWith('@')) say(`${inner} is not allowed`);
    else found.push(...commonOffences(inner, each));
  }
  return found;
}

/** V 4: unknown properties and values that are not permitted; V 5.8 for the others. */
function ofDescription(section: string, object: Json, allowed: Properties, common = true): string[] {
  return Object.entries(object).flatMap(([key, value]) => {
    const holds = Object.hasOwn(allowed, key) ? allowed[key] : undefined;
    if (holds) return holds(value) ? [] : [`${section} ${key}: ${JSON.stringify(value)}`];
    if (common && isCommon(key)) return commonOffences(key, value);
    return [`V 4 ${section}: ${key} is no property of it`];
  });
}

/** V 5.2: the text, or an array of it and an object with @base, @language or both. */
function contextOffences(context: unknown): string[] {
  const [name, local, ...more] = Array.isArray(context) ? (context as unknown[]) : [context, {}];
  const fine =
    name === 'http://www.w3.org/ns/csvw' &&
    more.length === 0 &&
    isObject(local) &&
    Object.entries(local).every(
      ([key, value]) => (key === '@base' && isLink(value)) || (key === '@language' && isLanguage(value)),
    );
  return fine ? [] : ['V 5.2 @context'];
}

/** V 5.1.4: names of columns, at least one. */
const isReference = (value: unknown, names: readonly unknown[]): boolean => {
  const each: readonly unknown[] = Array.isArray(value) ? value : [value];
  return each.length > 0 && each.every((name) => isText(name) && names.includes(name));
};

/** V 5.5, foreignKeys: both properties, nothing else, and one of the two ways to name the other table. */
function isForeignKey(key: Json, names: readonly unknown[]): boolean {
  const { columnReference, reference, ...others } = key;
  if (Object.keys(others).length > 0 || !isReference(columnReference, names) || !isObject(reference))
    return false;
  const { resource, schemaReference, columnReference: there, ...rest } = reference;
  const places = [resource, schemaReference].filter((each) => each !== undefined);
  return Object.keys(rest).length === 0 && places.length === 1 && places.every(isLink) && there !== undefined;
}

/** The columns that the table itself holds. */
export function columnsOf(schema: unknown): readonly Json[] {
  const columns = isObject(schema) ? schema['columns'] : undefined;
  return Array.isArray(columns) ? columns.filter(isObject) : [];
}

function schemaOffences(schema: Json): string[] {
  const found = ofDescription('V 5.5', schema, SCHEMA);
  const columns = columnsOf(schema);
  for (const column of columns) found.push(...ofDescription('V 5.6', column, COLUMN));
  const names = columns.map((column) => column['name']).filter((name) => name !== undefined);
  if (new Set(names).size < names.length) found.push('V 5.5 columns: a name stands twice');
  const virtual = columns.map((column) => column['virtual'] === true);
  if (virtual.includes(true) && virtual.lastIndexOf(false) > virtual.indexOf(true))
    found.push('V 5.6 virtual: a column of the file stands behind a virtual one');
  for (const key of ['primaryKey', 'rowTitles'])
    if (schema[key] !== undefined && !isReference(schema[key], names)) found.push(`V 5.1.4 ${key}`);
  const { foreignKeys } = schema;
  if (Array.isArray(foreignKeys) && !foreignKeys.every((key) => isObject(key) && isForeignKey(key, names)))
    found.push('V 5.5 foreignKeys');
  return found;
}

/** Everything that the description of one table does not keep; each begins with the section of the rule. */
export function metadataOffences(text: string): string[] {
  // V C, "Encoding considerations": no byte order mark.
  if (text.startsWith('\ufeff')) return ['V C byte order mark'];
  let metadata: unknown;
  try {
    metadata = JSON.parse(text);
  } catch {
    return ['V 4 no JSON'];
  }
  if (!isObject(metadata)) return ['V 5 no object at the top'];
  const found = [
    ...contextOffences(metadata['@context']),
    ...ofDescription('V 5.4', metadata, TABLE),
    // V 5.4.1: the one property that is required.
    ...(isText(metadata['url']) ? [] : ['V 5.4.1 url']),
  ];
  const { dialect, tableSchema, notes } = metadata;
  if (isObject(dialect)) found.push(...ofDescription('V 5.9', dialect, DIALECT, false));
  if (isObject(tableSchema)) found.push(...schemaOffences(tableSchema));
  return [...found, ...commonOffences('notes', notes)];
}
