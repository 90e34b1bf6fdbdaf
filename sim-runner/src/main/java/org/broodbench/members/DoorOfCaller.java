package org.broodbench.members;

import com.hazelcast.client.impl.clientside.DefaultClientExtension;
import com.hazelcast.config.SocketInterceptorConfig;
import com.hazelcast.nio.SocketInterceptor;

/**
 * Hangs the door into the calling end. The engine finds this class by the service file in the
 * resources; without it its open edition ignores the door of its own configuration.
 */
public final class DoorOfCaller extends DefaultClientExtension {
  @Override
  public SocketInterceptor createSocketInterceptor(SocketInterceptorConfig config) {
    return config == null ? null : (SocketInterceptor) config.getImplementation();
  }
}
