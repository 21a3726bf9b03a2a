/**
 * XML as a stream, for the formats of maps that are XML.
 *
 * <p>In: a file. Out: {@link plyscape.zones.xml.XmlReader}, a pull reader that knows nothing of
 * maps. Always true: nothing outside the file is fetched, no entity is defined or expanded but
 * XML's own five, and what is malformed is an {@link plyscape.fault.InputFault} with line and
 * column.
 */
package plyscape.zones.xml;
