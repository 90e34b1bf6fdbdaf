package org.broodbench.members;

import com.hazelcast.instance.EndpointQualifier;
import com.hazelcast.instance.impl.DefaultNodeContext;
import com.hazelcast.instance.impl.DefaultNodeExtension;
import com.hazelcast.instance.impl.Node;
import com.hazelcast.instance.impl.NodeExtension;
import com.hazelcast.internal.cluster.impl.JoinMessage;
import com.hazelcast.nio.MemberSocketInterceptor;

/**
 * Hangs the door into a member. The engine asks for it at every connection that comes in, before it
 * reads a byte of it; without this its open edition has no answer. Other members are not let join:
 * each stands alone.
 */
final class DoorOfMember extends DefaultNodeContext {
  private final Door door;

  DoorOfMember(Door door) {
    this.door = door;
  }

  @Override
  public NodeExtension createNodeExtension(Node node) {
    return new DefaultNodeExtension(node) {
      @Override
      public MemberSocketInterceptor getSocketInterceptor(EndpointQualifier endpoint) {
        return door;
      }

      @Override
      public void validateJoinRequest(JoinMessage joinMessage) {
        throw new SecurityException("this member stands alone");
      }
    };
  }
}
