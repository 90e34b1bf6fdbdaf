/** The live page: a small web server on the loopback address, and what it answers. */
package org.broodbench.serve;
