/**
 * Commands on an earlier output: {@code verify} cuts its programs in simulation again, {@code
 * resume} writes a program that takes a stopped run up, proved before it is written.
 */
package plyscape.cli.recheck;
